import { Plant } from './plant';

/** A plant that has run well for long enough that every window is full. */
export const settled = (): Plant => new Plant().run(40);

/** Seconds from now until the entry is raised; −1 where it is not within `within`. */
export function secondsUntil(plant: Plant, entry: string, within: number): number {
  for (let second = 1; second <= within; second += 1) {
    plant.run(1);
    if (plant.standing(entry)?.active === true) return second;
  }
  return -1;
}

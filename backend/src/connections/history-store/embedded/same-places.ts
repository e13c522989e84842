import type { FoundHolder } from './find-columns';

/** Holders whose columns stand at the same places, so that one statement reads all of them. */
export interface SamePlaces {
  readonly positions: readonly number[];
  readonly holders: readonly (FoundHolder & {
    /** At which place of the question it stands. */
    readonly asked: number;
  })[];
}

/**
 * Puts holders together whose columns stand at the same places in the same order, so many at most, so that no statement holds up the
 * others for long.
 * @param holders in the order of the question; null: the store knows none of its columns
 */
export function samePlaces(holders: readonly (FoundHolder | null)[], most: number): readonly SamePlaces[] {
  const groups = new Map<string, SamePlaces['holders'][number][]>();
  const all: SamePlaces[] = [];
  for (const [asked, one] of holders.entries()) {
    if (one === null) continue;
    const positions = one.found.map(({ position }) => position);
    const key = positions.join(' ');
    let group = groups.get(key);
    if (group === undefined || group.length >= most) {
      group = [];
      groups.set(key, group);
      all.push({ positions, holders: group });
    }
    group.push({ ...one, asked });
  }
  return all;
}

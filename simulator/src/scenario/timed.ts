/** Something that began, and perhaps was ended. Times in seconds of the simulation. */
export interface Timed {
  readonly sinceS: number;
  repairedS: number | null;
}

interface Course {
  readonly onsetS: number;
  readonly repairS: number;
}

/** How far it has come or gone, 0 to 1: first order both ways. */
export function strengthAt(timed: Timed, { onsetS, repairS }: Course, nowS: number): number {
  const come = (ageS: number, timeS: number): number => (timeS > 0 ? 1 - Math.exp(-ageS / timeS) : 1);
  if (timed.repairedS === null) return come(nowS - timed.sinceS, onsetS);
  return come(timed.repairedS - timed.sinceS, onsetS) * (1 - come(nowS - timed.repairedS, repairS));
}

/** Ends it when its time is over; true once nothing is left of it. */
export function isOver(timed: Timed, course: Course, lastsS: number | null, nowS: number): boolean {
  if (timed.repairedS === null && lastsS !== null && nowS - timed.sinceS >= lastsS) timed.repairedS = nowS;
  return timed.repairedS !== null && strengthAt(timed, course, nowS) < 0.001;
}

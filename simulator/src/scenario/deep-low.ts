import type { FaultSize } from '../faults/fault';

/** A low crosses the site: how far the pressure falls, Pa. The usual one is the worst of a year of an airport's hours. */
const fallsPa: Readonly<Record<FaultSize, number>> = { small: 1400, usual: 2800, large: 4200 };
const fallS = 12 * 3600;
/** The fall sets in and ends softly over this share of its time. */
const softShare = 0.1;

/** Pa below the usual weather so long after it began; after its end it fills again as fast as it came. */
export function deepLowPa(size: FaultSize, ageS: number, endedForS: number | null): number {
  const reached = fallsPa[size] * rampShare((ageS - (endedForS ?? 0)) / fallS);
  return endedForS === null ? reached : reached * (1 - rampShare(endedForS / fallS));
}

export const deepLowIsOver = (endedForS: number | null): boolean => endedForS !== null && endedForS >= fallS;

/** From 0 to 1 at an even rate with soft ends. */
function rampShare(share: number): number {
  const along = Math.min(1, Math.max(0, share));
  const rate = 1 / (1 - softShare);
  if (along < softShare) return (rate * along * along) / (2 * softShare);
  if (along > 1 - softShare) return 1 - rampShare(1 - along);
  return rate * (along - softShare / 2);
}

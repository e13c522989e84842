const secondMs = 1000;
/** Distances between moments that divide a day, or are whole days: the same moments are asked for again as time goes on. s */
const steps = [
  1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10_800, 21_600, 43_200, 86_400, 172_800, 604_800,
  1_209_600, 2_592_000, 7_776_000, 15_552_000, 31_104_000,
];

/**
 * At most so many moments of a period, evenly spaced on a grid that stands still while the period moves.
 * @param fromMs @param toMs later than fromMs @param most at least 1
 * @returns ms since 1970, oldest first; at least the middle of a period that holds no place of the grid
 */
export function pickMoments(fromMs: number, toMs: number, most: number): readonly number[] {
  const least = (toMs - fromMs) / most;
  const last = steps.at(-1) ?? 1;
  const stepMs =
    secondMs * (steps.find((step) => step * secondMs >= least) ?? Math.ceil(least / secondMs / last) * last);
  const moments: number[] = [];
  for (let atMs = Math.ceil(fromMs / stepMs) * stepMs; atMs < toMs; atMs += stepMs) moments.push(atMs);
  return moments.length > 0 ? moments : [Math.floor((fromMs + toMs) / 2 / secondMs) * secondMs];
}

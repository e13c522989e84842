import type { LaneLine } from '../../charts/lane';

/** What a line says at a moment: the value nearest to it; null within a gap, or where it has nothing yet or any more. */
export function valueAt(line: LaneLine, seconds: number): number | null {
  let nearest = -1;
  line.seconds.forEach((at, index) => {
    const best = line.seconds[nearest];
    if (best === undefined || Math.abs(at - seconds) < Math.abs(best - seconds)) nearest = index;
  });
  const [first, last] = [line.seconds[0], line.seconds.at(-1)];
  if (first === undefined || last === undefined || seconds < first || seconds > last) return null;
  return line.mean[nearest] ?? null;
}

/** Least and most of what lies between two moments; null where nothing does. */
export function extremes(
  line: LaneLine,
  from: number,
  to: number,
): { readonly min: number; readonly max: number } | null {
  let [low, high] = [Infinity, -Infinity];
  line.seconds.forEach((at, index) => {
    if (at < from || at > to) return;
    low = Math.min(low, line.min[index] ?? Infinity);
    high = Math.max(high, line.max[index] ?? -Infinity);
  });
  return low > high ? null : { min: low, max: high };
}

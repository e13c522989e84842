/** A straight line through points, made of medians: outliers do not move it. */
export interface RobustSlope {
  /** Median of the slopes of all pairs. */
  readonly slope: number;
  /** Its interval, from the order of the slopes. */
  readonly lower: number;
  readonly upper: number;
}

/**
 * Theil–Sen slope with its interval (Sen 1968, J. Amer. Stat. Assoc. 63:1379–1389): the slopes of all pairs in order; the
 * interval cuts (N ∓ z σ)/2 of them off, σ² = n(n−1)(2n+5)/18 (Kendall). `z` 1.96 for 95 %. Points of equal x make no
 * pair. NaN where there are fewer than two pairs.
 */
export function theilSen(x: ArrayLike<number>, y: ArrayLike<number>, count: number, z = 1.96): RobustSlope {
  const slopes: number[] = [];
  for (let i = 0; i < count; i += 1)
    for (let j = i + 1; j < count; j += 1) {
      const run = (x[j] ?? Number.NaN) - (x[i] ?? Number.NaN);
      if (run !== 0) slopes.push(((y[j] ?? Number.NaN) - (y[i] ?? Number.NaN)) / run);
    }
  if (slopes.length < 2) return { slope: Number.NaN, lower: Number.NaN, upper: Number.NaN };
  const sorted = Float64Array.from(slopes).sort();
  const cut = (z * Math.sqrt((count * (count - 1) * (2 * count + 5)) / 18)) / 2;
  const first = Math.max(0, Math.round(sorted.length / 2 - cut) - 1);
  const last = Math.min(sorted.length - 1, Math.round(sorted.length / 2 + cut));
  return { slope: medianOfSorted(sorted), lower: sorted[first] ?? Number.NaN, upper: sorted[last] ?? Number.NaN };
}

/** The slope alone, through points one unit of x apart. */
export const theilSenSlope = (...y: readonly number[]): number =>
  theilSen(
    y.map((_, i) => i),
    y,
    y.length,
  ).slope;

function medianOfSorted(sorted: Float64Array): number {
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? Number.NaN) + upper) / 2;
}

/** y = intercept + slope·x. */
export interface WeightedLine {
  readonly intercept: number;
  readonly slope: number;
}

/**
 * The line through points that are known to different degrees: least Σ wᵢ (yᵢ − a − b xᵢ)², wᵢ = 1/u²(yᵢ) (GUM, JCGM 100:2008, H.3,
 * with weights). NaN where all x are one.
 */
export function weightedLine(x: readonly number[], y: readonly number[], weight: readonly number[]): WeightedLine {
  const sum = (of: (i: number) => number): number =>
    x.reduce((total, _, i) => total + (weight[i] ?? Number.NaN) * of(i), 0);
  const all = sum(() => 1);
  const meanX = sum((i) => x[i] ?? Number.NaN) / all;
  const meanY = sum((i) => y[i] ?? Number.NaN) / all;
  const xx = sum((i) => ((x[i] ?? Number.NaN) - meanX) ** 2);
  const xy = sum((i) => ((x[i] ?? Number.NaN) - meanX) * ((y[i] ?? Number.NaN) - meanY));
  const slope = xx > 0 ? xy / xx : Number.NaN;
  return { slope, intercept: meanY - slope * meanX };
}

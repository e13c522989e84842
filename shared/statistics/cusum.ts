/**
 * One step of the upper tabular CUSUM: C⁺ = max(0, x − (μ₀ + K) + C⁺ before), in the unit of x (Montgomery, Introduction to
 * Statistical Quality Control, eq. 9.2; NIST/SEMATECH e-Handbook 6.3.2.3). K is half of the shift to be found; it signals above H.
 * NaN in gives NaN: the caller leaves gaps out.
 */
export const cusumAbove = (before: number, x: number, target: number, allowance: number): number =>
  keepNaN(x - (target + allowance) + before);

/** The lower one, of falls: C⁻ = max(0, (μ₀ − K) − x + C⁻ before). */
export const cusumBelow = (before: number, x: number, target: number, allowance: number): number =>
  keepNaN(target - allowance - x + before);

const keepNaN = (sum: number): number => (sum > 0 || Number.isNaN(sum) ? sum : 0);

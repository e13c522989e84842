/** Exponentially weighted moving average: z = λ x + (1 − λ) z before (NIST/SEMATECH e-Handbook 6.3.2.4). 0 < λ ≤ 1. */
export const ewma = (before: number, x: number, lambda: number): number => lambda * x + (1 - lambda) * before;

/**
 * Half width of its limits after `samples` from a start at the target: L σ √(λ/(2−λ) (1 − (1−λ)^(2i))) (Montgomery, Introduction
 * to Statistical Quality Control, eq. 9.25 – 9.28); Infinity gives the steady width.
 */
export const ewmaHalfWidth = (sigma: number, lambda: number, width: number, samples = Infinity): number =>
  width * sigma * Math.sqrt((lambda / (2 - lambda)) * (1 - (1 - lambda) ** (2 * samples)));

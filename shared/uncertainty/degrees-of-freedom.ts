import { coverageFactor } from './combine';
import { studentTFactor } from './student-t';

/** Probability behind k = 2 of a normal distribution (GUM table G.1), so that both kinds of interval mean the same. */
export const coverageProbability = 0.9545;

/** From so many on t_p(ν) is 2 within 0.7 %: they count as many. */
const many = 200;

/** So little is lost to rounding before a whole number is cut off. */
const roundingShare = 1e-9;

/** u_i⁴/ν_i of one contribution |c_i|·u(x_i): what Welch–Satterthwaite adds up. 0 where it rests on no count of observations. */
export function scatterOf(contribution: number, degreesOfFreedom: number): number {
  const square = contribution * contribution;
  return (square * square) / degreesOfFreedom;
}

/**
 * Effective degrees of freedom ν_eff = u_c⁴ ÷ Σ u_i⁴/ν_i (Welch–Satterthwaite, GUM eq. G.2b), rounded down (G.4.1), at
 * least 1. `scatter` is the sum; Infinity where it is 0.
 */
export function degreesOfScatter(combined: number, scatter: number): number {
  if (!(scatter > 0)) return Infinity;
  return Math.max(1, Math.floor((combined ** 4 / scatter) * (1 + roundingShare)));
}

/** The same of parts |c_i|·u(x_i) with their ν_i; Infinity where one rests on no observations. */
export function effectiveDegreesOfFreedom(
  combined: number,
  parts: readonly { readonly contribution: number; readonly degreesOfFreedom: number }[],
): number {
  let sum = 0;
  for (const { contribution, degreesOfFreedom } of parts) sum += scatterOf(contribution, degreesOfFreedom);
  return degreesOfScatter(combined, sum);
}

const factors: number[] = [];

/** k for about 95 %: 2 where degrees of freedom are many, else t_p(ν) of as many as are sure (GUM G.3.2, rounded down). */
export function coverageFactorOf(degreesOfFreedom: number): number {
  if (!(degreesOfFreedom < many)) return coverageFactor;
  const whole = Math.max(1, Math.floor(degreesOfFreedom));
  return (factors[whole] ??= studentTFactor(whole, coverageProbability));
}

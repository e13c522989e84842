import { coverageFactor } from './combine';
import { studentTFactor } from './student-t';

/** Probability behind k = 2 of a normal distribution (GUM table G.1), so that both kinds of interval mean the same. */
export const coverageProbability = 0.9545;

/** From so many on t_p(ν) is 2 within 0.5 %: they count as many. */
const many = 200;

/**
 * Effective degrees of freedom ν_eff = u_c⁴ ÷ Σ u_i⁴/ν_i (Welch–Satterthwaite, GUM eq. G.2b), rounded down (G.4.1), at
 * least 1. `parts`: contributions |c_i|·u(x_i) with their ν_i; Infinity where one rests on no observations.
 */
export function effectiveDegreesOfFreedom(
  combined: number,
  parts: readonly { readonly contribution: number; readonly degreesOfFreedom: number }[],
): number {
  let sum = 0;
  for (const { contribution, degreesOfFreedom } of parts) sum += contribution ** 4 / degreesOfFreedom;
  if (!(sum > 0)) return Infinity;
  return Math.max(1, Math.floor(combined ** 4 / sum));
}

const factors: number[] = [];

/** k for about 95 %: 2 where degrees of freedom are many, else t_p(ν) of as many as are sure (GUM G.3.2, rounded down). */
export function coverageFactorOf(degreesOfFreedom: number): number {
  if (!(degreesOfFreedom < many)) return coverageFactor;
  const whole = Math.max(1, Math.floor(degreesOfFreedom));
  return (factors[whole] ??= studentTFactor(whole, coverageProbability));
}

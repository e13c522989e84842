import { kelvinDifference, type KelvinDifference } from '../units/quantity';

/**
 * Log mean of the two terminal differences of a counterflow exchanger, K: (d₁ − d₂)/ln(d₁/d₂), and d₁ where they
 * are equal (Bergman et al., 7th ed., eq. 11.15). NaN where one is not above 0: temperatures cross, or a sensor is wrong.
 */
export function logMeanDifference(d1: number, d2: number): KelvinDifference {
  if (!(d1 > 0 && d2 > 0)) return kelvinDifference(Number.NaN);
  const ratio = d1 / d2;
  // Series of the same expression about equality, where the quotient is 0/0; error below 1e-9 of d.
  if (Math.abs(ratio - 1) < 1e-4) return kelvinDifference((d1 + d2) / 2);
  return kelvinDifference((d1 - d2) / Math.log(ratio));
}

/** ∂LMTD/∂d₁ by differentiating the formula: (1 − LMTD/d₁)/ln(d₁/d₂), and 1/2 where the ends are equal. ∂/∂d₂: ends exchanged. */
export function logMeanSlope(d1: number, d2: number): number {
  const ratio = d1 / d2;
  if (Math.abs(ratio - 1) < 1e-4) return 0.5;
  return (1 - logMeanDifference(d1, d2) / d1) / Math.log(ratio);
}

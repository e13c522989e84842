import { incompleteBeta } from './beta';
import { lowerGamma, upperGamma } from './gamma';
import { rootBetween } from './root-between';

/** Density of the standard normal distribution. */
export const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** Φ(z): erf is an incomplete gamma function, so the tails keep their digits (NIST DLMF 7.11.1, 8.4.6). */
export const normalProbability = (z: number): number =>
  z < 0 ? upperGamma(0.5, (z * z) / 2) / 2 : 1 - upperGamma(0.5, (z * z) / 2) / 2;

/** z with Φ(z) = p, 0 < p < 1. */
export const normalQuantile = (p: number): number => rootBetween(normalProbability, p, -38, 38);

/** Share of χ² with ν degrees of freedom below x (NIST/SEMATECH e-Handbook 1.3.6.6.6). */
export const chiSquareProbability = (x: number, degrees: number): number => lowerGamma(degrees / 2, x / 2);

/** x that a share p of χ² with ν degrees of freedom stays below. */
export const chiSquareQuantile = (p: number, degrees: number): number =>
  rootBetween(
    (x) => chiSquareProbability(x, degrees),
    p,
    0,
    largestFor((x) => chiSquareProbability(x, degrees), p),
  );

/** Share of Student's t with ν degrees of freedom, whole or not, below t (NIST/SEMATECH e-Handbook 1.3.6.6.4). */
export function studentProbability(t: number, degrees: number): number {
  const tail = incompleteBeta(degrees / 2, 0.5, degrees / (degrees + t * t)) / 2;
  return t < 0 ? tail : 1 - tail;
}

/** t that a share p of Student's distribution stays below. For an interval of 95 % on both sides p is 0.975. */
export function studentQuantile(p: number, degrees: number): number {
  if (p < 0.5) return -studentQuantile(1 - p, degrees);
  const probability = (t: number): number => studentProbability(t, degrees);
  return rootBetween(probability, p, 0, largestFor(probability, p));
}

/** Share of Fisher's F with ν₁ and ν₂ degrees of freedom below x (NIST/SEMATECH e-Handbook 1.3.6.6.5). */
export function fisherProbability(x: number, over: number, under: number): number {
  if (x <= 0) return 0;
  const whole = over * x + under;
  // The smaller share goes into the function: 1 less a share near 1 would lose its digits.
  return over * x < under
    ? incompleteBeta(over / 2, under / 2, (over * x) / whole)
    : 1 - incompleteBeta(under / 2, over / 2, under / whole);
}

/** x that a share p of F stays below. */
export function fisherQuantile(p: number, over: number, under: number): number {
  const probability = (x: number): number => fisherProbability(x, over, under);
  return rootBetween(probability, p, 0, largestFor(probability, p));
}

/** A bound above the quantile. */
function largestFor(probability: (x: number) => number, p: number): number {
  let bound = 1;
  while (probability(bound) < p && bound < 1e300) bound *= 2;
  return bound;
}

/** Helpers after the Guide to the expression of uncertainty in measurement (GUM, JCGM 100:2008). `u` is always a standard uncertainty. */

/** Coverage factor for about 95 % when degrees of freedom are many (GUM 6.3.3). */
export const coverageFactor = 2;

/** u = a/√3 of a band ± a with nothing more known about it (GUM 4.3.7). */
export const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3);

/** Square sum of independent contributions, each already multiplied with its sensitivity (GUM eq. 10). */
export const combine2 = (a: number, b: number): number => Math.sqrt(a * a + b * b);
export const combine3 = (a: number, b: number, c: number): number => Math.sqrt(a * a + b * b + c * c);

/** u of x₁ − x₂ whose errors are correlated by r (GUM eq. 13 and 16): u² = u₁² + u₂² − 2 r u₁ u₂. */
export function differenceUncertainty(u1: number, u2: number, correlation = 0): number {
  return Math.sqrt(Math.max(0, u1 * u1 + u2 * u2 - 2 * correlation * u1 * u2));
}

/** u of a product or quotient from relative contributions (GUM eq. 12). */
export const relativeToAbsolute = (value: number, relative: number): number => Math.abs(value) * relative;

/** U = k u with k = 2 (GUM 6.2.1). */
export const expanded = (u: number): number => coverageFactor * u;

import { normalQuantile } from './distributions';
import type { Eigen } from './symmetric-eigen';

export interface ComponentDistances {
  /** T² within the components that are kept: Σ t²/λ. */
  readonly t2: number;
  /** What they leave over: SPE = |x − P Pᵀ x|². */
  readonly spe: number;
}

/** How far a point, less its mean, lies from what is usual: along the first `kept` principal components, and off them. */
export function componentDistances(x: ArrayLike<number>, { values, vectors }: Eigen, kept: number): ComponentDistances {
  const size = values.length;
  let t2 = 0;
  let spe = 0;
  for (let i = 0; i < size; i += 1) {
    let score = 0;
    for (let j = 0; j < size; j += 1) score += (vectors[i * size + j] as number) * (x[j] ?? Number.NaN);
    if (i < kept) t2 += (score * score) / (values[i] as number);
    else spe += score * score;
  }
  return { t2, spe };
}

/**
 * Limit of SPE that a share `alpha` of good points passes, from the eigenvalues that are not kept (Jackson & Mudholkar 1979,
 * Technometrics 21): θ₁ (z √(2 θ₂ h₀²)/θ₁ + 1 + θ₂ h₀ (h₀−1)/θ₁²)^(1/h₀), h₀ = 1 − 2 θ₁ θ₃/(3 θ₂²).
 */
export function speLimit(values: ArrayLike<number>, kept: number, alpha: number): number {
  const left = Array.from(values).slice(kept);
  const theta = (power: number): number => left.reduce((sum, value) => sum + value ** power, 0);
  const one = theta(1);
  const two = theta(2);
  const h = jacksonExponent(one, two, theta(3));
  const z = normalQuantile(1 - alpha);
  return one * ((z * Math.sqrt(2 * two * h * h)) / one + 1 + (two * h * (h - 1)) / (one * one)) ** (1 / h);
}

/** h₀ of that limit. */
export const jacksonExponent = (one: number, two: number, three: number): number =>
  1 - (2 * one * three) / (3 * two * two);

import { fisherQuantile } from './distributions';
import { solveInPlace } from './linear-solve';

/**
 * Hotelling's T² of one point: (x − m)ᵀ S⁻¹ (x − m); of a mean of n samples n times as much (Johnson & Wichern, Applied
 * Multivariate Statistical Analysis, eq. 5-4). `covariance` row by row. NaN where S is singular.
 */
export function hotellingT2(x: ArrayLike<number>, mean: ArrayLike<number>, covariance: ArrayLike<number>): number {
  const away = Float64Array.from(x, (value, i) => value - (mean[i] ?? Number.NaN));
  const turned = solveInPlace(Float64Array.from(covariance), away.slice());
  return away.reduce((sum, value, i) => sum + value * (turned[i] as number), 0);
}

/**
 * Limit of T² of new points, of `signals` signals with mean and covariance from `samples` good ones, that a share `alpha` of good
 * points passes: p (n+1)(n−1)/(n (n−p)) F (Montgomery, Introduction to Statistical Quality Control, eq. 11.20).
 */
export const hotellingLimit = (signals: number, samples: number, alpha: number): number =>
  ((signals * (samples + 1) * (samples - 1)) / (samples * (samples - signals))) *
  fisherQuantile(1 - alpha, signals, samples - signals);

/** Limit of T² of a mean of `samples`: p (n−1)/(n−p) F (Johnson & Wichern, eq. 5-6). */
export const hotellingMeanLimit = (signals: number, samples: number, alpha: number): number =>
  ((signals * (samples - 1)) / (samples - signals)) * fisherQuantile(1 - alpha, signals, samples - signals);

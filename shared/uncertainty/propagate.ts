/**
 * Standard uncertainty of y = f(x₁ … x_N) by the law of propagation with correlation (GUM eq. 13 and 16):
 * u² = Σ_i Σ_j c_i c_j r_ij u_i u_j. `sensitivities` c_i = ∂f/∂x_i; `correlation(i, j)` r_ij of different inputs.
 */
export function propagatedUncertainty(
  sensitivities: readonly number[],
  uncertainties: readonly number[],
  correlation: (i: number, j: number) => number = () => 0,
): number {
  return Math.sqrt(Math.max(0, propagatedCovariance(sensitivities, sensitivities, uncertainties, correlation)));
}

/** Covariance of two results of the same inputs: Σ_i Σ_j c_i d_j r_ij u_i u_j (GUM eq. H.9). */
export function propagatedCovariance(
  sensitivities: readonly number[],
  others: readonly number[],
  uncertainties: readonly number[],
  correlation: (i: number, j: number) => number = () => 0,
): number {
  let sum = 0;
  for (let i = 0; i < uncertainties.length; i += 1)
    for (let j = 0; j < uncertainties.length; j += 1)
      sum +=
        (sensitivities[i] ?? 0) *
        (others[j] ?? 0) *
        (uncertainties[i] ?? 0) *
        (uncertainties[j] ?? 0) *
        (i === j ? 1 : correlation(i, j));
  return sum;
}

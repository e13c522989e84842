/** Effectiveness–NTU of a counterflow exchanger (Bergman et al., 7th ed., tables 11.3 and 11.4). Capacity rates in W/K. */

/** ε = Q ÷ (C_min (T_h,in − T_c,in)). */
export const effectiveness = (heat: number, leastCapacityRate: number, inletDifference: number): number =>
  heat / (leastCapacityRate * inletDifference);

/** ε of NTU and C_r = C_min/C_max. */
export function effectivenessOfNtu(ntu: number, ratio: number): number {
  if (Math.abs(1 - ratio) < 1e-9) return ntu / (1 + ntu);
  const e = Math.exp(-ntu * (1 - ratio));
  return (1 - e) / (1 - ratio * e);
}

/** NTU of ε and C_r; NaN where no such exchanger exists (ε outside 0 … 1). */
export function ntuOfEffectiveness(epsilon: number, ratio: number): number {
  if (!(epsilon >= 0 && epsilon < 1)) return Number.NaN;
  if (Math.abs(1 - ratio) < 1e-9) return epsilon / (1 - epsilon);
  return Math.log((1 - epsilon * ratio) / (1 - epsilon)) / (1 - ratio);
}

/** ∂NTU/∂ε = 1/((1 − ε)(1 − ε C_r)), by differentiating the formula. */
export const ntuByEffectiveness = (epsilon: number, ratio: number): number =>
  1 / ((1 - epsilon) * (1 - epsilon * ratio));

/** ∂NTU/∂C_r = (NTU − ε/(1 − ε C_r))/(1 − C_r); near C_r = 1 the series a²/2 with a = ε/(1 − ε). */
export function ntuByRatio(epsilon: number, ratio: number): number {
  const a = epsilon / (1 - epsilon);
  if (Math.abs(1 - ratio) < 1e-4) return (a * a) / 2;
  return (ntuOfEffectiveness(epsilon, ratio) - epsilon / (1 - epsilon * ratio)) / (1 - ratio);
}

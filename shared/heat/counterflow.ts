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

/** UA = Q ÷ (F LMTD), W/K, with F = 1: plates in counterflow (Bergman et al., 7th ed., eq. 11.14). */
export const conductance = (heat: number, logMean: number): number => heat / logMean;

/**
 * UA of a clean exchanger at other flows, W/K. Half of the clean resistance 1/UA stands on each side (own rule) and goes
 * with flow^−n, n = 0.7 … 0.8 (common practice, no source); the wall's own part is left out.
 */
export function cleanConductance(clean: number, shareOfFlow1: number, shareOfFlow2: number, exponent: number): number {
  const half = 0.5 / clean;
  return 1 / (half * shareOfFlow1 ** -exponent + half * shareOfFlow2 ** -exponent);
}

/** Cleanliness: UA now ÷ UA clean at the same flows (TEMA's fouling resistance is 1/UA − 1/UA_clean). */
export const cleanliness = (now: number, clean: number): number => now / clean;

/** UA = Q ÷ (F LMTD), W/K, with F = 1: plates in counterflow (Bergman et al., 7th ed., eq. 11.14). */
export const conductance = (heat: number, logMean: number): number => heat / logMean;

/** What of the clean resistance 1/UA stands where at the reference flows; together 1. */
export interface ResistanceShares {
  readonly film1: number;
  readonly film2: number;
  readonly wall: number;
}

/** Without more records than one: half on each side, and no wall (own rule). */
export const equalShares: ResistanceShares = { film1: 0.5, film2: 0.5, wall: 0 };

/**
 * UA of a clean exchanger at other flows, W/K: 1/UA = a q₁^−n + b q₂^−n + w, as shares of 1/UA at the reference flows. A film's
 * resistance goes with flow^−n, n = 0.7 … 0.8 (common practice, no source); the wall's does not.
 */
export function cleanConductance(
  clean: number,
  shareOfFlow1: number,
  shareOfFlow2: number,
  exponent: number,
  { film1, film2, wall }: ResistanceShares = equalShares,
): number {
  return clean / (film1 * shareOfFlow1 ** -exponent + film2 * shareOfFlow2 ** -exponent + wall);
}

/** Cleanliness: UA now ÷ UA clean at the same flows (TEMA's fouling resistance is 1/UA − 1/UA_clean). */
export const cleanliness = (now: number, clean: number): number => now / clean;

/** What dirt adds to the resistance of an exchanger at the same flows, K/W: 1/UA − 1/UA_clean (Bergman et al., 7th ed., eq. 11.5; TEMA). */
export const foulingResistance = (now: number, clean: number): number => 1 / now - 1 / clean;

/** The same of one square metre of its plates, m²K/W: R_f = A (1/UA − 1/UA_clean) (TEMA). */
export const foulingFactor = (now: number, clean: number, areaM2: number): number =>
  areaM2 * foulingResistance(now, clean);

/**
 * Share of a step that a first-order lag shows after a time: 1 − e^(−t/τ), 0 … 1 (lumped heat balance, Incropera eq. 5.6). 1
 * where there is no lag. Both in s.
 */
export const laggedShare = (elapsedS: number, timeConstantS: number): number =>
  timeConstantS > 0 ? 1 - Math.exp(-elapsedS / timeConstantS) : 1;

/** By how much a first-order lag is behind a settled ramp: rate × τ, in the unit of the rate a second. */
export const rampLag = (ratePerS: number, timeConstantS: number): number => ratePerS * timeConstantS;

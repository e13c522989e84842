/**
 * Water that nothing explains, m³/s: what the tanks gain, less what was topped up, plus what gas carried out (conservation of
 * water). Above 0 water comes in from somewhere, below 0 it is lost.
 */
export const waterBalance = (gainM3PerS: number, topUpM3PerS: number, exhaustM3PerS: number): number =>
  gainM3PerS - topUpM3PerS + exhaustM3PerS;

/** What nothing explains over its standard uncertainty: beyond 2 it is more than chance (GUM 6.3.3). */
export const waterBalanceSignificance = (balance: number, u: number): number => balance / u;

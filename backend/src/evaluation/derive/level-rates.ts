import type { SecondWindows } from './memory/second-windows';

/** A rate of change a second with the standard uncertainty that noise gives it. */
export interface Rate {
  value: number;
  u: number;
  /** Degrees of freedom of `u`. */
  degreesOfFreedom: number;
}

/** Half windows, s: the short one sees a change within ten seconds, the long one is 15 times surer. */
const short = 5;
const long = 30;

/** How fast a signal moves: over a minute, or over ten seconds where that says something else (by three times its noise). Writes into `into`. */
export function rateOf(windows: SecondWindows, signal: number, into: Rate): void {
  const quick = windows.slope(signal, short);
  const quickU = windows.slopeNoise(signal, short);
  const steady = windows.slope(signal, long);
  const trusted = Math.abs(quick - steady) <= 3 * quickU;
  into.value = trusted ? steady : quick;
  into.degreesOfFreedom = windows.noiseDegreesOfFreedom(signal);
  into.u = trusted ? windows.slopeNoise(signal, long) : quickU;
}

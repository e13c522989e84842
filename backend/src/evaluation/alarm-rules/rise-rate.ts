import type { SecondRings } from './second-rings';

/** Ticks between the two ends of a rise. */
export const riseWindowTicks = 20;
/** Ring length that `riseRate` needs: each end is a mean of three ticks. */
export const riseRingLength = riseWindowTicks + 3;

/** Mean rate of rise over the last twenty ticks (one a second), per second; NaN until they are known. */
export function riseRate(rings: SecondRings, signal: number): number {
  return (rings.mean(signal, 0, 2) - rings.mean(signal, riseWindowTicks, riseWindowTicks + 2)) / riseWindowTicks;
}

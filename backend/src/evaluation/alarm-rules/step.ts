import type { SecondRings } from './second-rings';

/** Ticks between the old and the new end of a step: the step has to happen within them. */
export const stepWindowTicks = 5;

/** Ring length that `stepOf` needs: the old end is a mean of three ticks. */
export const stepRingLength = stepWindowTicks + 3;

/**
 * How far a signal has moved within the last five ticks: mean of the newest two ticks less mean of the three
 * ticks that are five to seven old. The means take single spikes and slosh down; NaN until eight ticks are known.
 */
export function stepOf(rings: SecondRings, signal: number): number {
  return rings.mean(signal, 0, 1) - oldEnd(rings, signal);
}

/** The level from which the step is counted. */
export const oldEnd = (rings: SecondRings, signal: number): number =>
  rings.mean(signal, stepWindowTicks, stepWindowTicks + 2);

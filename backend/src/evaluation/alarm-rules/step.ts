import type { SecondRings } from './second-rings';

/** A way to look at a signal: its newest value, its step, its old end. */
export type Ring = (signal: number) => number;

/** Ticks between the old and the new end of a step: the step has to happen within them. */
export const stepWindowTicks = 5;

/** Ring length that `stepOf` (old end: mean of three ticks) and `slopeChange` (old slope: seven ticks) need. */
export const stepRingLength = stepWindowTicks + 7;

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

/** How much steeper a signal rises over the newest five ticks than over the seven before, per tick; NaN until known. */
export const slopeChange = (rings: SecondRings, signal: number): number =>
  slope(rings, signal, 0, stepWindowTicks - 1) - slope(rings, signal, stepWindowTicks, stepRingLength - 1);

/** Slope by least squares over the ticks from `newest` to `oldest` ticks ago. */
function slope(rings: SecondRings, signal: number, newest: number, oldest: number): number {
  const middle = (newest + oldest) / 2;
  let products = 0;
  let squares = 0;
  for (let age = newest; age <= oldest; age += 1) {
    products += (middle - age) * rings.at(signal, age);
    squares += (middle - age) ** 2;
  }
  return products / squares;
}

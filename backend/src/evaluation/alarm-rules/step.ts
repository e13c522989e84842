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

/** How far a signal had moved within the five ticks before those of `stepOf`: means of two and two ticks; NaN until known. */
export const stepBefore = (rings: SecondRings, signal: number): number =>
  rings.mean(signal, stepWindowTicks, stepWindowTicks + 1) - rings.mean(signal, stepRingLength - 2, stepRingLength - 1);

/** How much steeper a signal rises over the newest five ticks than over the seven before, per tick; NaN until known. */
export const slopeChange = (rings: SecondRings, signal: number): number => rings.weighted(signal, steeper);

/** Weights of a slope by least squares over the ticks from `newest` to `oldest` ticks ago. */
function slopeWeights(newest: number, oldest: number): number[] {
  const middle = (newest + oldest) / 2;
  const fromMiddle = Array.from({ length: oldest - newest + 1 }, (_, i) => middle - (newest + i));
  const squares = fromMiddle.reduce((sum, distance) => sum + distance ** 2, 0);
  return fromMiddle.map((distance) => distance / squares);
}

const steeper = Float64Array.from([
  ...slopeWeights(0, stepWindowTicks - 1),
  ...slopeWeights(stepWindowTicks, stepRingLength - 1).map((weight) => -weight),
]);

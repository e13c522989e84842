import { combine2 } from '@ebbline/shared/uncertainty/combine';
import { correlationOf } from './correlation';
import type { UnitFrame } from './unit-frame';
import { partOf } from './write-point';

/** Standard uncertainty of `scale` times the difference of two slots, with what a matched pair has in common (GUM eq. 16). */
export function differenceParts(frame: UnitFrame, one: number, other: number, scale = 1): number {
  const a = partOf(frame, one, scale);
  const b = partOf(frame, other, scale);
  const correlation = correlationOf(frame.plan.unit.matchedPairs, one, other);
  if (correlation === 0) return combine2(a, b);
  return Math.sqrt(Math.max(0, a * a + b * b + sharedPart(frame, one, other, -2 * correlation * a * b)));
}

/** Writes down what the errors of two slots have in common, as variance, and hands it on. */
export function sharedPart({ budget, site }: UnitFrame, one: number, other: number, variance: number): number {
  if (budget !== null)
    budget.addCovariance(`${site.slots.pointId[one] ?? ''}, ${site.slots.pointId[other] ?? ''}`, variance);
  return variance;
}

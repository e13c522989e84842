import { coverageFactorOf, degreesOfScatter, scatterOf } from '@ebbline/shared/uncertainty/degrees-of-freedom';
import type { ScatterHolder } from './scatter-holder';
import { part } from './uncertainty-budget';
import type { UnitFrame } from './unit-frame';
import { uOf } from './write-point';
import { writeDerived } from './write-derived';

/**
 * `part` of a contribution that rests on a count of observations, such as a fit: its degrees of freedom ν go into the coverage
 * factor of the value, which `writeFitted` has to write. Infinity is none.
 */
export function fittedPart(frame: ScatterHolder, from: string, contribution: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom < Infinity) frame.scatter += scatterOf(contribution, degreesOfFreedom);
  return part(frame, from, contribution, degreesOfFreedom);
}

/** `partOf` of a derived value whose own uncertainty may rest on few observations. */
export function fittedPartOf(frame: UnitFrame, slot: number, sensitivity: number): number {
  const contribution = sensitivity * uOf(frame, slot);
  return fittedPart(frame, frame.site.slots.pointId[slot] ?? '', contribution, degreesOf(frame, slot));
}

/** Degrees of freedom of what a slot holds; Infinity of a measured point, whose accuracy is a stated band. */
export const degreesOf = ({ state }: UnitFrame, slot: number): number => state.degreesOfFreedom[slot] ?? Infinity;

/**
 * `writePoint` of a value with contributions of few observations: U = k u with k by Student's t of the effective degrees of freedom
 * (GUM G.4.1), so that the interval holds 95.45 % all the same.
 */
export function writeFitted(frame: UnitFrame, slot: number, value: number, u: number, where = -1): void {
  const degrees = degreesOfScatter(u, frame.scatter);
  frame.scatter = 0;
  if (slot < 0) return;
  frame.state.degreesOfFreedom[slot] = degrees;
  writeDerived(frame.state, slot, frame.nowMs, frame.tally, value, coverageFactorOf(degrees) * u, where);
}

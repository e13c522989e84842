import { expanded } from '@ebbline/shared/uncertainty/combine';
import { standardUncertainty } from './standard-uncertainty';
import type { UnitFrame } from './unit-frame';
import { writeDerived } from './write-derived';

/** Writes a derived value that no place decides, with its standard uncertainty, by what the frame's tally has taken. */
export function writePoint(frame: UnitFrame, slot: number, value: number, u: number): void {
  writeDerived(frame.state, slot, frame.nowMs, frame.tally, value, expanded(u), -1);
}

/** Standard uncertainty of what a slot of the frame's site holds now. */
export const uOf = (frame: UnitFrame, slot: number): number => standardUncertainty(frame.site.slots, frame.state, slot);

/** What a slot's uncertainty does to a value that moves by `sensitivity` with it; written down under the slot's own id. */
export function partOf(frame: UnitFrame, slot: number, sensitivity: number): number {
  const contribution = sensitivity * uOf(frame, slot);
  if (frame.budget !== null) frame.budget.add(frame.site.slots.pointId[slot] ?? '', contribution);
  return contribution;
}

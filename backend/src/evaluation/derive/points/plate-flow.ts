import { badBits, reasonBit } from '../../slots/quality-reasons';
import { resistanceFloorShare } from '../derive-constants';
import type { UnitFrame } from '../unit-frame';

/** Slot of the flow that stands for the plates of a branch: its own meter's, or else the loop's. */
export function plateFlowSlot({ plan }: UnitFrame, branch: number): number {
  const one = plan.unit.branches[branch];
  return one !== undefined && one.slot.flow >= 0 && one.ratedFlowM3PerS !== null
    ? one.slot.flow
    : plan.slot['loop.flow'];
}

/** The rated flow that belongs to it. */
function ratedOf({ plan }: UnitFrame, branch: number): number {
  const one = plan.unit.branches[branch];
  return one !== undefined && one.slot.flow >= 0 && one.ratedFlowM3PerS !== null
    ? one.ratedFlowM3PerS
    : plan.unit.design.ratedFlowM3PerS;
}

/** Notes the flow of a plate; it says nothing below 30 % of its rated one. */
export function takePlateFlow(frame: UnitFrame, branch: number): void {
  if (frame.tally.take(frame.state, plateFlowSlot(frame, branch)) < resistanceFloorShare * ratedOf(frame, branch))
    frame.tally.note(reasonBit.undefined, Infinity);
}

/** Its share of the rated flow; NaN where it is bad. */
export function plateFlowShare(frame: UnitFrame, branch: number): number {
  const slot = plateFlowSlot(frame, branch);
  if (slot < 0 || ((frame.state.reasons[slot] ?? 0) & badBits) !== 0) return Number.NaN;
  return (frame.state.value[slot] ?? Number.NaN) / ratedOf(frame, branch);
}

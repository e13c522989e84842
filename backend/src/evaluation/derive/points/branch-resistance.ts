import { relativeResistance } from '@ebbline/shared/hydraulics/relative-resistance';
import { combine3, expanded, rectangular } from '@ebbline/shared/uncertainty/combine';
import { reasonBit } from '../../slots/quality-reasons';
import { commissionedHalfWidth, resistanceFloorShare } from '../derive-constants';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { uOf } from '../write-point';
import { writeDerived } from '../write-derived';
import { isIsolated } from './flow-shares';

export const hasBranchResistance = ({ unit, supplyAnchor, returnAnchor }: UnitPlan): boolean =>
  supplyAnchor !== null &&
  returnAnchor !== null &&
  unit.branches.some(({ slot, commissioned }) => slot.flow >= 0 && commissioned !== undefined);

/**
 * Resistance of each branch against its commissioning record at equal flow: driving pressure over its flow to the power n. The mains'
 * part of the loss is in both; with other branches shut the mains lose less, which makes it some per cent too small (own
 * rule). Says nothing below 30 % of the branch's rated flow, and does not apply while it is isolated.
 */
export function deriveBranchResistance(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { branches } = plan.unit;
  const drivingSlot = plan.slot.drivingPressure;
  for (let i = 0; i < branches.length; i += 1) {
    const branch = branches[i];
    const target = plan.pipes.branchRatioSlot[i] ?? -1;
    if (branch === undefined || target < 0) continue;
    const { commissioned, ratedFlowM3PerS, slot } = branch;
    tally.begin();
    if (commissioned === undefined || isIsolated(frame, slot.isolated)) tally.note(reasonBit.notApplicable, Infinity);
    const driving = tally.take(state, drivingSlot);
    const flow = tally.take(state, slot.flow);
    const rated = ratedFlowM3PerS ?? Number.NaN;
    if (flow < resistanceFloorShare * rated) tally.note(reasonBit.undefined, Infinity);
    const exponent = commissioned?.exponent ?? Number.NaN;
    const value = relativeResistance(driving, commissioned?.lossPa ?? Number.NaN, flow, rated, exponent);
    const u = combine3(
      part(frame, 'drivingPressure', (value * uOf(frame, drivingSlot)) / driving),
      part(frame, 'branch.<id>.flow', (exponent * value * uOf(frame, slot.flow)) / flow),
      part(frame, 'branches.<id>.records', value * rectangular(commissionedHalfWidth)),
    );
    writeDerived(state, target, frame.nowMs, tally, value, expanded(u), branch.place);
  }
}

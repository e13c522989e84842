import { flowOfPressure, flowShare, relativeResistance } from '@ebbline/shared/hydraulics/relative-resistance';
import { combine2, combine3, rectangular } from '@ebbline/shared/uncertainty/combine';
import { cubicMetrePerSecond } from '@ebbline/shared/units/quantity';
import { badBits, reasonBit } from '../../slots/quality-reasons';
import { commissionedHalfWidth, resistanceFloorShare, shareFloor } from '../derive-constants';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { partOf, writePoint } from '../write-point';

export const hasLoopLoss = ({ unit, supplyAnchor, returnAnchor }: UnitPlan): boolean =>
  unit.design.commissioned.loopLossPa !== null && supplyAnchor !== null && returnAnchor !== null;

export const hasFlowShare = (plan: UnitPlan): boolean => hasLoopLoss(plan) && plan.slot['loop.flow'] >= 0;

/**
 * Flow that the driving pressure moves through the commissioned loop, m³/s. In shape c the driving pressure is the pump's,
 * from its supply sensor. Isolated branches take their share of the rated flow out: the mains' own part of the loss is
 * left aside, which makes it 2 % too small where one of eight is shut (own rule).
 */
export function deriveExpectedFlow(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { commissioned, ratedFlowM3PerS } = plan.unit.design;
  tally.begin();
  const driving = tally.take(state, plan.slot.drivingPressure);
  const lossPa = commissioned.loopLossPa ?? Number.NaN;
  const { loopExponent } = commissioned;
  const whole = flowOfPressure(driving, lossPa, cubicMetrePerSecond(ratedFlowM3PerS), loopExponent);
  const value = whole * openShare(frame);
  const u = combine2(
    partOf(frame, plan.slot.drivingPressure, value / (loopExponent * Math.max(driving, 1))),
    part(frame, 'commissioning.loop.loss', (value * rectangular(commissionedHalfWidth)) / loopExponent),
  );
  writePoint(frame, plan.slot.expectedFlow, value, u);
}

/** Loop flow against that: below 1 something is in the way that was not there at commissioning. */
export function deriveFlowShare(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  tally.begin();
  const flow = tally.take(state, plan.slot['loop.flow']);
  const expected = tally.take(state, plan.slot.expectedFlow);
  if (expected < shareFloor * plan.unit.design.ratedFlowM3PerS) tally.note(reasonBit.undefined, Infinity);
  const value = flowShare(flow, expected);
  const u = combine2(
    partOf(frame, plan.slot['loop.flow'], 1 / expected),
    partOf(frame, plan.slot.expectedFlow, value / expected),
  );
  writePoint(frame, plan.slot.flowShare, value, u);
}

/** Resistance of the loop against commissioning at equal flow; says nothing below 30 % of rated flow. */
export function deriveLoopResistance(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { commissioned, ratedFlowM3PerS } = plan.unit.design;
  tally.begin();
  const driving = tally.take(state, plan.slot.drivingPressure);
  const flow = tally.take(state, plan.slot['loop.flow']);
  if (flow < resistanceFloorShare * ratedFlowM3PerS) tally.note(reasonBit.undefined, Infinity);
  const lossPa = commissioned.loopLossPa ?? Number.NaN;
  const value = relativeResistance(driving, lossPa, flow, ratedFlowM3PerS, commissioned.loopExponent);
  const perPa = relativeResistance(1, lossPa, flow, ratedFlowM3PerS, commissioned.loopExponent);
  const u = combine3(
    partOf(frame, plan.slot.drivingPressure, perPa),
    partOf(frame, plan.slot['loop.flow'], (commissioned.loopExponent * value) / flow),
    part(frame, 'commissioning.loop.loss', value * rectangular(commissionedHalfWidth)),
  );
  writePoint(frame, plan.slot.loopResistance, value, u);
}

/** Whether a branch is known to be shut off. */
export const isIsolated = ({ state }: UnitFrame, slot: number): boolean =>
  slot >= 0 && ((state.reasons[slot] ?? 0) & badBits) === 0 && state.value[slot] === 1;

/** Rated flow of the branches that are open over that of all; 1 where a rated flow is missing. */
function openShare(frame: UnitFrame): number {
  let all = 0;
  let open = 0;
  for (const branch of frame.plan.unit.branches) {
    if (branch.ratedFlowM3PerS === null) return 1;
    all += branch.ratedFlowM3PerS;
    if (!isIsolated(frame, branch.slot.isolated)) open += branch.ratedFlowM3PerS;
  }
  return all === 0 ? 1 : open / all;
}

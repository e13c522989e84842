import { headRatio } from '@ebbline/shared/hydraulics/pump-affinity';
import { pumpHydraulicPower } from '@ebbline/shared/hydraulics/pump-power';
import { combine2, combine3, rectangular } from '@ebbline/shared/uncertainty/combine';
import { cubicMetrePerSecond, pascalDifference } from '@ebbline/shared/units/quantity';
import { reasonBit } from '../../slots/quality-reasons';
import { nearFlowOverSpeed } from '../derive-constants';
import { isSmall } from '../small';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { uOf, writePoint } from '../write-point';
import { flowOfPump } from './filter-resistance';
import { inletOfPump } from './pump-efficiency';

export const hasPumpPower = (plan: UnitPlan): boolean =>
  plan.slot['pump.discharge.pressure'] >= 0 && inletOfPump(plan) >= 0 && flowOfPump(plan) >= 0;

const hasRecord = (plan: UnitPlan): boolean =>
  plan.slot['pump.speed'] >= 0 && flowOfPump(plan) >= 0 && plan.unit.design.commissioned.pump !== null;

export const hasPumpHeadRatio = (plan: UnitPlan): boolean =>
  hasPumpPower(plan) && hasRecord(plan) && (plan.unit.design.commissioned.pump?.risePa ?? null) !== null;

export const hasPumpEfficiencyRatio = (plan: UnitPlan): boolean =>
  hasRecord(plan) &&
  plan.slot['pump.power'] >= 0 &&
  hasPumpPower(plan) &&
  plan.unit.design.commissioned.pumpEfficiency !== null;

/** Pressure rise of the pump with its uncertainty. Written in place. */
const rise = { value: Number.NaN, u: Number.NaN };

function takeRise({ tally, state, plan }: UnitFrame): void {
  rise.value = tally.take(state, plan.slot['pump.discharge.pressure']) - tally.take(state, inletOfPump(plan));
}

/** Power that the pump gives the water, W; 0 is a standing pump's, and below its uncertainty the rise is none. */
export function derivePumpPower(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const flowSlot = flowOfPump(plan);
  tally.begin();
  takeRise(frame);
  const flow = tally.take(state, flowSlot);
  const value = pumpHydraulicPower(cubicMetrePerSecond(flow), pascalDifference(rise.value));
  const u = combine3(
    part(frame, 'transfer.flow or loop.flow', Math.abs(rise.value) * uOf(frame, flowSlot)),
    part(frame, 'pump.discharge.pressure', Math.abs(flow) * uOf(frame, plan.slot['pump.discharge.pressure'])),
    part(frame, 'pump.inlet.pressure or separator.pressure', Math.abs(flow) * uOf(frame, inletOfPump(plan))),
  );
  writePoint(frame, plan.slot.pumpHydraulicPower, value, u);
}

/** Takes flow and speed; does not apply while flow over speed is another than the commissioned one. */
function speedRatioIfComparable({ tally, state, plan }: UnitFrame): number {
  const record = plan.unit.design.commissioned.pump;
  const speed = tally.take(state, plan.slot['pump.speed']);
  const flow = tally.take(state, flowOfPump(plan));
  const speedRatio = speed / (record?.speed ?? Number.NaN);
  const flowOverSpeed = flow / (record?.flowM3PerS ?? Number.NaN) / speedRatio;
  if (!(Math.abs(flowOverSpeed - 1) <= nearFlowOverSpeed) && !tally.isBad())
    tally.note(reasonBit.notApplicable, Infinity);
  return speedRatio;
}

/** Pressure rise over the commissioned one, brought to this speed by affinity: below 1 the pump is worn or draws gas. */
export function derivePumpHeadRatio(frame: UnitFrame): void {
  const { tally, plan } = frame;
  const { pump } = plan.unit.design.commissioned;
  const { slot } = plan;
  tally.begin();
  takeRise(frame);
  rise.u = combine2(uOf(frame, slot['pump.discharge.pressure']), uOf(frame, inletOfPump(plan)));
  const speedRatio = speedRatioIfComparable(frame);
  if (isSmall(rise.value, rise.u) && !tally.isBad()) tally.note(reasonBit.undefined, Infinity);
  const value = headRatio(rise.value, pump?.risePa ?? Number.NaN, speedRatio);
  const speedU = uOf(frame, slot['pump.speed']) / (frame.state.value[slot['pump.speed']] ?? Number.NaN);
  const u = combine3(
    part(frame, 'pump.discharge.pressure, pump.inlet.pressure', (value * rise.u) / rise.value),
    part(frame, 'pump.speed', 2 * value * speedU),
    part(frame, 'commissioning.pump.rise', value * rectangular(pump?.headHalfWidth ?? Number.NaN)),
  );
  writePoint(frame, slot.pumpHeadRatio, value, u);
}

/** Efficiency over the commissioned one while flow over speed is the same: at another it is another, worn or not. */
export function derivePumpEfficiencyRatio(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { pump, pumpEfficiency } = plan.unit.design.commissioned;
  const { slot } = plan;
  tally.begin();
  const now = tally.take(state, slot.pumpEfficiency);
  speedRatioIfComparable(frame);
  const value = now / (pumpEfficiency ?? Number.NaN);
  const u = combine2(
    part(frame, 'pumpEfficiency', (value * uOf(frame, slot.pumpEfficiency)) / now),
    part(frame, 'commissioning.pumpEfficiency', value * rectangular(pump?.efficiencyHalfWidth ?? Number.NaN)),
  );
  writePoint(frame, slot.pumpEfficiencyRatio, value, u);
}

import { pumpEfficiency } from '@ebbline/shared/hydraulics/pump-power';
import { combine2, combine3 } from '@ebbline/shared/uncertainty/combine';
import { cubicMetrePerSecond, pascalDifference, watt } from '@ebbline/shared/units/quantity';
import { reasonBit } from '../../slots/quality-reasons';
import { resistanceFloorShare } from '../derive-constants';
import { isSmall } from '../small';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { partOf, uOf, writePoint } from '../write-point';
import { flowOfPump } from './filter-resistance';

export const hasPumpEfficiency = (plan: UnitPlan): boolean =>
  plan.slot['pump.power'] >= 0 &&
  plan.slot['pump.discharge.pressure'] >= 0 &&
  inletOfPump(plan) >= 0 &&
  flowOfPump(plan) >= 0;

/** Without a sensor at the inlet the separator stands for it: its head over the pump and the suction loss nearly cancel (0.2 m). */
export const inletOfPump = ({ slot }: UnitPlan): number =>
  slot['pump.inlet.pressure'] >= 0 ? slot['pump.inlet.pressure'] : slot['separator.pressure'];

/** Overall efficiency of the pump, wire to water; says nothing while it hardly moves water. */
export function derivePumpEfficiency(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const flowSlot = flowOfPump(plan);
  const inletSlot = inletOfPump(plan);
  const dischargeSlot = plan.slot['pump.discharge.pressure'];
  const powerSlot = plan.slot['pump.power'];
  tally.begin();
  const flow = cubicMetrePerSecond(tally.take(state, flowSlot));
  const rise = pascalDifference(tally.take(state, dischargeSlot) - tally.take(state, inletSlot));
  const power = watt(tally.take(state, powerSlot));
  const tooSmall =
    flow < resistanceFloorShare * plan.unit.design.ratedFlowM3PerS ||
    power <= 0 ||
    rise <= 0 ||
    isSmall(power, uOf(frame, powerSlot)) ||
    isSmall(rise, combine2(uOf(frame, dischargeSlot), uOf(frame, inletSlot)));
  if (tooSmall && !tally.isBad()) tally.note(reasonBit.undefined, Infinity);
  const value = pumpEfficiency(flow, rise, power);
  const u = combine3(
    partOf(frame, flowSlot, rise / power),
    combine2(partOf(frame, dischargeSlot, flow / power), partOf(frame, inletSlot, flow / power)),
    partOf(frame, powerSlot, value / power),
  );
  writePoint(frame, plan.slot.pumpEfficiency, value, u);
}

import { relativeResistance, viscosityOnLoss } from '@ebbline/shared/hydraulics/relative-resistance';
import { combine3, rectangular } from '@ebbline/shared/uncertainty/combine';
import { celsius } from '@ebbline/shared/units/quantity';
import { reasonBit } from '../../slots/quality-reasons';
import { commissionedHalfWidth, resistanceFloorShare } from '../derive-constants';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { partOf, writePoint } from '../write-point';

export const hasFilterResistance = (plan: UnitPlan): boolean =>
  plan.slot['filter.pressureDrop'] >= 0 && plan.unit.design.commissioned.filterLossPa !== null && flowOfPump(plan) >= 0;

/** The filter stands behind the pump: in shape a that is the transfer pump, whose flow is the loop's but for a moment. */
export const flowOfPump = ({ slot }: UnitPlan): number =>
  slot['transfer.flow'] >= 0 ? slot['transfer.flow'] : slot['loop.flow'];

/** Resistance of the filter against the clean one at equal flow; says nothing below 30 % of rated flow, or while neither pump runs. */
export function deriveFilterResistance(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { commissioned, ratedFlowM3PerS } = plan.unit.design;
  const flowSlot = flowOfPump(plan);
  tally.begin();
  const drop = tally.take(state, plan.slot['filter.pressureDrop']);
  const flow = tally.take(state, flowSlot);
  if (pumpStands(frame) || flow < resistanceFloorShare * ratedFlowM3PerS) tally.note(reasonBit.undefined, Infinity);
  const lossPa = commissioned.filterLossPa ?? Number.NaN;
  const raw = relativeResistance(drop, lossPa, flow, ratedFlowM3PerS, commissioned.filterExponent);
  const viscosity = viscosityEffect(frame);
  const value = raw / viscosity;
  const perPa = relativeResistance(1, lossPa, flow, ratedFlowM3PerS, commissioned.filterExponent) / viscosity;
  const u = combine3(
    partOf(frame, plan.slot['filter.pressureDrop'], perPa),
    partOf(frame, flowSlot, (commissioned.filterExponent * value) / flow),
    part(frame, 'commissioning.filter.loss', value * rectangular(commissionedHalfWidth)),
  );
  writePoint(frame, plan.slot.filterResistance, value, u);
}

/** A standby that carries the loop drives its water through the same filter. */
function pumpStands({ tally, state, plan }: UnitFrame): boolean {
  const lead = plan.slot['pump.running'];
  const standby = plan.slot['pump.standby.running'];
  if (lead < 0 || tally.take(state, lead) !== 0) return false;
  return standby < 0 || tally.take(state, standby) === 0;
}

/**
 * What the water's viscosity makes of the filter's loss at the same flow: (μ/μ₀)^(2 − n), from Δp = f·ρ v²/2 with f ~ Re^(n − 2). 1 in
 * turbulent flow (n = 2), and where the file does not say how warm the water was at commissioning. The water there is the return's.
 */
function viscosityEffect({ tally, state, plan }: UnitFrame): number {
  const { filterTemperatureC, filterExponent } = plan.unit.design.commissioned;
  if (filterTemperatureC === null || filterExponent >= 2 || plan.slot['return.temperature'] < 0) return 1;
  const now = celsius(tally.take(state, plan.slot['return.temperature']));
  return viscosityOnLoss(plan.fluid.viscosity(now) / plan.fluid.viscosity(celsius(filterTemperatureC)), filterExponent);
}

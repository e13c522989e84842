import { heatBalance, heatBalanceSignificance } from '@ebbline/shared/heat/heat-balance';
import { heatRate } from '@ebbline/shared/heat/heat-rate';
import { combine2 } from '@ebbline/shared/uncertainty/combine';
import { celsius, kilogramPerSecond, watt } from '@ebbline/shared/units/quantity';
import { reasonBit } from '../../slots/quality-reasons';
import { captureFloorShare, captureFloorW } from '../derive-constants';
import { isSmall } from '../small';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import { partOf, uOf, writePoint } from '../write-point';

/**
 * Heat that leaves the loop over heat that arrives in the facility water: both sides of one exchanger, so 1 but for the pump's
 * work (below 1 %). Against chip power stands the capture, which is no balance: air takes its share.
 */
export function deriveHeatBalance(frame: UnitFrame): void {
  const { plan } = frame;
  const { loop, loopU, facility, floor } = bothSides(frame);
  if ((facility < floor || isSmall(facility, uOf(frame, plan.slot.facilityHeat))) && !frame.tally.isBad())
    frame.tally.note(reasonBit.undefined, Infinity);
  const value = heatBalance(loop, facility);
  const u = combine2(
    part(frame, 'heatRemoved', loopU / facility),
    partOf(frame, plan.slot.facilityHeat, value / facility),
  );
  writePoint(frame, plan.slot.heatBalance, value, u);
}

/** The gap between both sides over its standard uncertainty: beyond 3 a meter, a bypass or a mapping is wrong. */
export function deriveHeatBalanceSignificance(frame: UnitFrame): void {
  const { plan } = frame;
  const { loop, loopU, facility } = bothSides(frame);
  const value = heatBalanceSignificance(loop, loopU, facility, uOf(frame, plan.slot.facilityHeat));
  // A number of standard uncertainties has one of its own: 1.
  writePoint(frame, plan.slot.heatBalanceSignificance, value, part(frame, 'standard uncertainty of both heats', 1));
}

function bothSides(frame: UnitFrame) {
  const { tally, state, plan } = frame;
  tally.begin();
  const heat = tally.take(state, plan.slot.heatRemoved);
  const inUnit = heatInExchanger(frame);
  const loop = watt(Number.isNaN(inUnit) ? heat : inUnit);
  const heatU = uOf(frame, plan.slot.heatRemoved);
  const loopU = Number.isNaN(inUnit) ? heatU : combine2(heatU, tanksUncertainty(frame));
  const facility = watt(tally.take(state, plan.slot.facilityHeat));
  const rated = plan.unit.design.ratedHeatW;
  const floor = rated === null ? captureFloorW : captureFloorShare * rated;
  if (Math.abs(loop) < floor && Math.abs(facility) < floor) tally.note(reasonBit.undefined, Infinity);
  return { loop, loopU, facility, floor };
}

/**
 * What the water leaves in the exchanger now, W. Tanks before and behind it that warm or cool keep the difference to what the water
 * took up in the racks (C dT/dt). NaN where the unit's own volume is not stated or it was not watched long enough.
 */
function heatInExchanger({ plan, state, transit }: UnitFrame): number {
  if (!transit.known) return Number.NaN;
  const { exchangerInC, exchangerOutC } = transit;
  const capacity = plan.fluid.heatCapacity(celsius((exchangerInC + exchangerOutC) / 2));
  return heatRate(massFlowOf(state.value[plan.slot.massFlow]), capacity, celsius(exchangerOutC), celsius(exchangerInC));
}

const massFlowOf = (value: number | undefined) => kilogramPerSecond(value ?? Number.NaN);

/** u of what the tanks' volumes are not known by, W. */
function tanksUncertainty({ plan, state, supplyTemperature, transit }: UnitFrame): number {
  const capacity = plan.fluid.heatCapacity(supplyTemperature);
  return massFlowOf(state.value[plan.slot.massFlow]) * capacity * combine2(transit.exchangerInU, transit.exchangerOutU);
}

import { heatRate } from '@ebbline/shared/heat/heat-rate';
import { massFlow } from '@ebbline/shared/heat/mass-flow';
import { temperatureRise } from '@ebbline/shared/heat/temperature-rise';
import { celsius, cubicMetrePerSecond } from '@ebbline/shared/units/quantity';
import { differenceParts } from '../difference-parts';
import { heatParts } from '../heat-parts';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { writePoint } from '../write-point';

export const hasFacilityRise = ({ slot }: UnitPlan): boolean =>
  slot['facility.supply.temperature'] >= 0 && slot['facility.return.temperature'] >= 0;

export const hasFacilityHeat = (plan: UnitPlan): boolean => hasFacilityRise(plan) && plan.slot['facility.flow'] >= 0;

/** How much warmer the facility water leaves, K. */
export function deriveFacilityRise(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { slot } = plan;
  tally.begin();
  const into = celsius(tally.take(state, slot['facility.supply.temperature']));
  const out = celsius(tally.take(state, slot['facility.return.temperature']));
  const u = differenceParts(frame, slot['facility.return.temperature'], slot['facility.supply.temperature']);
  writePoint(frame, slot.facilityTemperatureRise, temperatureRise(out, into), u);
}

/** Heat that the facility water takes away, W; with the density of its supply, where its meter usually sits. */
export function deriveFacilityHeat(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { slot } = plan;
  tally.begin();
  const flow = cubicMetrePerSecond(tally.take(state, slot['facility.flow']));
  const into = celsius(tally.take(state, slot['facility.supply.temperature']));
  const out = celsius(tally.take(state, slot['facility.return.temperature']));
  const density = plan.facilityFluid.density(into);
  const capacity = plan.facilityFluid.heatCapacity(celsius((into + out) / 2));
  const flowMass = massFlow(density, flow);
  const u = heatParts(
    frame,
    {
      flow: slot['facility.flow'],
      supply: slot['facility.supply.temperature'],
      returned: slot['facility.return.temperature'],
    },
    { fluid: plan.facilityFluid, density, massFlow: flowMass, heatCapacity: capacity },
    out - into,
  );
  writePoint(frame, slot.facilityHeat, heatRate(flowMass, capacity, into, out), u);
}

import { conductivityAt25 } from '@ebbline/shared/fluid-properties/conductivity';
import { combine2 } from '@ebbline/shared/uncertainty/combine';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { uOf, writePoint } from '../write-point';

export const hasConductivity = ({ slot }: UnitPlan): boolean =>
  slot['water.conductivity'] >= 0 && slot['supply.temperature'] >= 0;

/** Conductivity at 25 °C, S/m, of a probe that reads the supply water as it is. */
export function deriveConductivity25(frame: UnitFrame): void {
  const { tally, state, plan, supplyTemperature } = frame;
  const { slot } = plan;
  const alpha = plan.unit.water.conductivityCoefficient;
  tally.begin();
  const reading = tally.take(state, slot['water.conductivity']);
  tally.take(state, slot['supply.temperature']);
  const value = conductivityAt25(reading, supplyTemperature, alpha);
  const perReading = 1 / (1 + alpha * (supplyTemperature - 25));
  const u = combine2(
    part(frame, 'water.conductivity', perReading * uOf(frame, slot['water.conductivity'])),
    part(frame, 'supply.temperature', value * alpha * perReading * uOf(frame, slot['supply.temperature'])),
  );
  writePoint(frame, slot.conductivity25, value, u);
}

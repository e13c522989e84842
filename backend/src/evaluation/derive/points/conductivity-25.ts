import { conductivityAt25, conductivityCoefficient } from '@ebbline/shared/fluid-properties/conductivity';
import { combine2 } from '@ebbline/shared/uncertainty/combine';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { uOf, writePoint } from '../write-point';

export const hasConductivity = ({ slot }: UnitPlan): boolean =>
  slot['water.conductivity'] >= 0 && slot['supply.temperature'] >= 0;

/** Conductivity at 25 °C, S/m, of a probe that reads the supply water as it is. */
export function deriveConductivity25(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { slot } = plan;
  tally.begin();
  const reading = tally.take(state, slot['water.conductivity']);
  tally.take(state, slot['supply.temperature']);
  const value = conductivityAt25(reading, frame.supplyTemperature);
  const relative = combine2(
    uOf(frame, slot['water.conductivity']) / reading,
    conductivityCoefficient * uOf(frame, slot['supply.temperature']),
  );
  writePoint(frame, slot.conductivity25, value, value * relative);
}

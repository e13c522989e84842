import { phAtSlopeOf, zeroPotentialPh } from '@ebbline/shared/fluid-properties/ph-electrode';
import { combine2 } from '@ebbline/shared/uncertainty/combine';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { uOf, writePoint } from '../write-point';

export const hasPh = ({ slot, unit }: UnitPlan): boolean =>
  slot['water.ph'] >= 0 && (!unit.water.phSlopeOf25 || slot['supply.temperature'] >= 0);

/** pH with the electrode's slope at the temperature of the supply water; as it reads where the sender has put that right already. */
export function derivePh(frame: UnitFrame): void {
  const { tally, state, plan, supplyTemperature } = frame;
  const { slot } = plan;
  tally.begin();
  const reading = tally.take(state, slot['water.ph']);
  if (!plan.unit.water.phSlopeOf25) {
    writePoint(frame, slot.ph, reading, part(frame, 'water.ph', uOf(frame, slot['water.ph'])));
    return;
  }
  tally.take(state, slot['supply.temperature']);
  const value = phAtSlopeOf(reading, supplyTemperature);
  const fromNeutral = value - zeroPotentialPh;
  const perReading = phAtSlopeOf(zeroPotentialPh + 1, supplyTemperature) - zeroPotentialPh;
  const u = combine2(
    part(frame, 'water.ph', perReading * uOf(frame, slot['water.ph'])),
    part(
      frame,
      'supply.temperature',
      (Math.abs(fromNeutral) / (supplyTemperature + 273.15)) * uOf(frame, slot['supply.temperature']),
    ),
  );
  writePoint(frame, slot.ph, value, u);
}

import { addPower } from '@ebbline/shared/heat/add-power';
import { watt } from '@ebbline/shared/units/quantity';
import type { UnitFrame } from '../unit-frame';
import { partOf, writePoint } from '../write-point';

/** Electrical power of the chips, W: a complete sum (`UnitPlan.chipPowerSlots`) or nothing. One missing part makes it bad. */
export function deriveChipPower(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  tally.begin();
  if (plan.chipPowerSlots.length === 0) tally.take(state, -1);
  let sum = watt(0);
  let squares = 0;
  for (const slot of plan.chipPowerSlots) {
    sum = addPower(sum, watt(tally.take(state, slot)));
    squares += partOf(frame, slot, 1) ** 2;
  }
  writePoint(frame, plan.slot.chipPower, sum, Math.sqrt(squares));
}

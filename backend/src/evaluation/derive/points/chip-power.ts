import { addPower } from '@ebbline/shared/heat/add-power';
import { expanded } from '@ebbline/shared/uncertainty/combine';
import { watt } from '@ebbline/shared/units/quantity';
import { standardUncertainty } from '../standard-uncertainty';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

/** Electrical power of the chips, W: a complete sum (`UnitPlan.chipPowerSlots`) or nothing. One missing part makes it bad. */
export function deriveChipPower(frame: UnitFrame): void {
  const { tally, state, plan, site } = frame;
  tally.begin();
  if (plan.chipPowerSlots.length === 0) tally.take(state, -1);
  let sum = watt(0);
  let squares = 0;
  for (const slot of plan.chipPowerSlots) {
    sum = addPower(sum, watt(tally.take(state, slot)));
    squares += standardUncertainty(site.slots, state, slot) ** 2;
  }
  writeDerived(state, plan.slot.chipPower, frame.nowMs, tally, sum, expanded(Math.sqrt(squares)), -1);
}

import { approach } from '@ebbline/shared/heat/approach';
import { differenceUncertainty, expanded } from '@ebbline/shared/uncertainty/combine';
import { celsius } from '@ebbline/shared/units/quantity';
import { standardUncertainty } from '../standard-uncertainty';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

/** Supply temperature minus facility supply temperature, K. */
export function deriveApproach(frame: UnitFrame): void {
  const { tally, state, plan, site } = frame;
  const { slot } = plan;
  tally.begin();
  const supply = celsius(tally.take(state, slot['supply.temperature']));
  const facility = celsius(tally.take(state, slot['facility.supply.temperature']));
  const u = differenceUncertainty(
    standardUncertainty(site.slots, state, slot['supply.temperature']),
    standardUncertainty(site.slots, state, slot['facility.supply.temperature']),
  );
  writeDerived(state, slot.approach, frame.nowMs, tally, approach(supply, facility), expanded(u), -1);
}

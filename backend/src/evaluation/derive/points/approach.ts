import { approach } from '@ebbline/shared/heat/approach';
import { celsius } from '@ebbline/shared/units/quantity';
import { differenceParts } from '../difference-parts';
import type { UnitFrame } from '../unit-frame';
import { writePoint } from '../write-point';

/** Supply temperature minus facility supply temperature, K. */
export function deriveApproach(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { slot } = plan;
  tally.begin();
  const supply = celsius(tally.take(state, slot['supply.temperature']));
  const facility = celsius(tally.take(state, slot['facility.supply.temperature']));
  const u = differenceParts(frame, slot['supply.temperature'], slot['facility.supply.temperature']);
  writePoint(frame, slot.approach, approach(supply, facility), u);
}

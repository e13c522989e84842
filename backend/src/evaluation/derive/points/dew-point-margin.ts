import { dewPointMargin } from '@ebbline/shared/heat/dew-point-margin';
import { combine2 } from '@ebbline/shared/uncertainty/combine';
import { celsius } from '@ebbline/shared/units/quantity';
import type { UnitFrame } from '../unit-frame';
import { partOf, writePoint } from '../write-point';

/** Coldest wetted surface (loop supply, and facility supply where it is measured) minus the hall's dew point, K. */
export function deriveDewPointMargin(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { slot, dewPointSlot } = plan;
  const facilitySlot = slot['facility.supply.temperature'];
  tally.begin();
  const dew = celsius(tally.take(state, dewPointSlot));
  const supply = tally.take(state, slot['supply.temperature']);
  const facility = facilitySlot < 0 ? Infinity : tally.take(state, facilitySlot);
  const coldestSlot = facility < supply ? facilitySlot : slot['supply.temperature'];
  const u = combine2(partOf(frame, coldestSlot, 1), partOf(frame, dewPointSlot, 1));
  writePoint(frame, slot.dewPointMargin, dewPointMargin(celsius(Math.min(supply, facility)), dew), u);
}

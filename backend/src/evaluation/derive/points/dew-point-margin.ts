import { dewPointMargin } from '@ebbline/shared/heat/dew-point-margin';
import { combine2, expanded } from '@ebbline/shared/uncertainty/combine';
import { celsius } from '@ebbline/shared/units/quantity';
import { standardUncertainty } from '../standard-uncertainty';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

/** Coldest wetted surface (loop supply, and facility supply where it is measured) minus the hall's dew point, K. */
export function deriveDewPointMargin(frame: UnitFrame): void {
  const { tally, state, plan, site } = frame;
  const { slot, dewPointSlot } = plan;
  const facilitySlot = slot['facility.supply.temperature'];
  tally.begin();
  const dew = celsius(tally.take(state, dewPointSlot));
  const supply = tally.take(state, slot['supply.temperature']);
  const facility = facilitySlot < 0 ? Infinity : tally.take(state, facilitySlot);
  const coldestSlot = facility < supply ? facilitySlot : slot['supply.temperature'];
  const u = combine2(
    standardUncertainty(site.slots, state, coldestSlot),
    standardUncertainty(site.slots, state, dewPointSlot),
  );
  writeDerived(
    state,
    slot.dewPointMargin,
    frame.nowMs,
    tally,
    dewPointMargin(celsius(Math.min(supply, facility)), dew),
    expanded(u),
    -1,
  );
}

import { heatBalance, heatBalanceSignificance } from '@ebbline/shared/heat/heat-balance';
import { combine2 } from '@ebbline/shared/uncertainty/combine';
import { watt } from '@ebbline/shared/units/quantity';
import { reasonBit } from '../../slots/quality-reasons';
import { captureFloorShare, captureFloorW } from '../derive-constants';
import { isSmall } from '../small';
import type { UnitFrame } from '../unit-frame';
import { uOf, writePoint } from '../write-point';

/**
 * Heat that leaves the loop over heat that arrives in the facility water: both sides of one exchanger, so 1 but for the pump's
 * work (below 1 %). Against chip power stands the capture, which is no balance: air takes its share.
 */
export function deriveHeatBalance(frame: UnitFrame): void {
  const { plan } = frame;
  const { loop, facility } = bothSides(frame);
  if (isSmall(facility, uOf(frame, plan.slot.facilityHeat)) && !frame.tally.isBad())
    frame.tally.note(reasonBit.undefined, Infinity);
  const value = heatBalance(loop, facility);
  const relative = combine2(uOf(frame, plan.slot.heatRemoved) / loop, uOf(frame, plan.slot.facilityHeat) / facility);
  writePoint(frame, plan.slot.heatBalance, value, Math.abs(value * relative));
}

/** The gap between both sides over its standard uncertainty: beyond 3 a meter, a bypass or a mapping is wrong. */
export function deriveHeatBalanceSignificance(frame: UnitFrame): void {
  const { plan } = frame;
  const { loop, facility } = bothSides(frame);
  const value = heatBalanceSignificance(
    loop,
    uOf(frame, plan.slot.heatRemoved),
    facility,
    uOf(frame, plan.slot.facilityHeat),
  );
  // A number of standard uncertainties has one of its own: 1.
  writePoint(frame, plan.slot.heatBalanceSignificance, value, 1);
}

function bothSides(frame: UnitFrame) {
  const { tally, state, plan } = frame;
  tally.begin();
  const loop = watt(tally.take(state, plan.slot.heatRemoved));
  const facility = watt(tally.take(state, plan.slot.facilityHeat));
  const rated = plan.unit.design.ratedHeatW;
  const floor = rated === null ? captureFloorW : captureFloorShare * rated;
  if (Math.abs(loop) < floor && Math.abs(facility) < floor) tally.note(reasonBit.undefined, Infinity);
  return { loop, facility };
}

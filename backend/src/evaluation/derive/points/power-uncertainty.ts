import { reasonBit } from '../../slots/quality-reasons';
import type { UnitFrame } from '../unit-frame';
import { writePoint } from '../write-point';

/** Expanded uncertainty (k = 2) of another point of the unit as a point of its own, so that history keeps it as it was. */
function derive(frame: UnitFrame, of: number, slot: number): void {
  const { tally, state } = frame;
  tally.begin();
  tally.take(state, of);
  const value = state.expandedUncertainty[of] ?? Number.NaN;
  // A sensor behind it has no accuracy stated: there is nothing to tell.
  if (Number.isNaN(value) && !tally.isBad()) tally.note(reasonBit.notApplicable, Infinity);
  writePoint(frame, slot, value, Number.NaN);
}

export const deriveHeatRemovedUncertainty = (frame: UnitFrame): void =>
  derive(frame, frame.plan.slot.heatRemoved, frame.plan.slot.heatRemovedUncertainty);

export const deriveFacilityHeatUncertainty = (frame: UnitFrame): void =>
  derive(frame, frame.plan.slot.facilityHeat, frame.plan.slot.facilityHeatUncertainty);

export const deriveChipPowerUncertainty = (frame: UnitFrame): void =>
  derive(frame, frame.plan.slot.chipPower, frame.plan.slot.chipPowerUncertainty);

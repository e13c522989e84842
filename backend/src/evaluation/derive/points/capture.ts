import { capture } from '@ebbline/shared/heat/capture';
import { combine3 } from '@ebbline/shared/uncertainty/combine';
import { watt } from '@ebbline/shared/units/quantity';
import { reasonBit } from '../../slots/quality-reasons';
import { captureFloorShare, captureFloorW } from '../derive-constants';
import { isSmall } from '../small';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import { partOf, uOf, writePoint } from '../write-point';

/**
 * Heat removed ÷ the power that the chips drew when the water that returns now passed them; undefined while the loop stands, while the chips draw less than a twentieth of rated heat, or less than their meters tell from nothing.
 */
export function deriveCapture(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { slot, unit } = plan;
  tally.begin();
  const heat = watt(tally.take(state, slot.heatRemoved));
  const powerNow = tally.take(state, slot.chipPower);
  const aligned = plan.transit !== null && frame.memory !== null;
  if (aligned && !frame.transit.heatKnown)
    tally.note(frame.transit.standing ? reasonBit.undefined : reasonBit.warming, Infinity);
  const power = watt(aligned ? frame.transit.powerW : powerNow);
  const floor = unit.design.ratedHeatW === null ? captureFloorW : captureFloorShare * unit.design.ratedHeatW;
  if (power < floor || isSmall(power, uOf(frame, slot.chipPower))) tally.note(reasonBit.undefined, Infinity);
  const value = capture(heat, power);
  const u = combine3(
    partOf(frame, slot.heatRemoved, 1 / power),
    partOf(frame, slot.chipPower, value / power),
    part(frame, 'transit', aligned ? (frame.transit.powerU * value) / power : 0),
  );
  writePoint(frame, slot.capture, value, u);
}

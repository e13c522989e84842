import { capture } from '@ebbline/shared/heat/capture';
import { combine2, expanded, relativeToAbsolute } from '@ebbline/shared/uncertainty/combine';
import { watt } from '@ebbline/shared/units/quantity';
import { reasonBit } from '../../slots/quality-reasons';
import { captureFloorShare, captureFloorW } from '../derive-constants';
import { standardUncertainty } from '../standard-uncertainty';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

/** Heat removed ÷ chip power; undefined (`belowFloor`) while the chips draw less than a twentieth of rated heat. */
export function deriveCapture(frame: UnitFrame): void {
  const { tally, state, plan, site } = frame;
  const { slot, unit } = plan;
  tally.begin();
  const heat = watt(tally.take(state, slot.heatRemoved));
  const power = watt(tally.take(state, slot.chipPower));
  const floor = unit.design.ratedHeatW === null ? captureFloorW : captureFloorShare * unit.design.ratedHeatW;
  if (power < floor) tally.note(reasonBit.belowFloor, Infinity);
  const value = capture(heat, power);
  const relative = combine2(
    standardUncertainty(site.slots, state, slot.heatRemoved) / heat,
    standardUncertainty(site.slots, state, slot.chipPower) / power,
  );
  writeDerived(state, slot.capture, frame.nowMs, tally, value, expanded(relativeToAbsolute(value, relative)), -1);
}

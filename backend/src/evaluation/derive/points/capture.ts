import { capture } from '@ebbline/shared/heat/capture';
import { combine2, expanded, relativeToAbsolute } from '@ebbline/shared/uncertainty/combine';
import { watt } from '@ebbline/shared/units/quantity';
import { reasonBit } from '../../slots/quality-reasons';
import { captureFloorShare, captureFloorW } from '../derive-constants';
import { standardUncertainty } from '../standard-uncertainty';
import { isSmall } from '../small';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

/** Heat removed ÷ chip power; undefined while the chips draw less than a twentieth of rated heat, or less than their meters tell from nothing. */
export function deriveCapture(frame: UnitFrame): void {
  const { tally, state, plan, site } = frame;
  const { slot, unit } = plan;
  tally.begin();
  const heat = watt(tally.take(state, slot.heatRemoved));
  const power = watt(tally.take(state, slot.chipPower));
  const floor = unit.design.ratedHeatW === null ? captureFloorW : captureFloorShare * unit.design.ratedHeatW;
  if (power < floor || isSmall(power, standardUncertainty(site.slots, state, slot.chipPower)))
    tally.note(reasonBit.undefined, Infinity);
  const value = capture(heat, power);
  const relative = combine2(
    standardUncertainty(site.slots, state, slot.heatRemoved) / heat,
    standardUncertainty(site.slots, state, slot.chipPower) / power,
  );
  writeDerived(state, slot.capture, frame.nowMs, tally, value, expanded(relativeToAbsolute(value, relative)), -1);
}

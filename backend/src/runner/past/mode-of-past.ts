import { compileUnitSlots } from '../../evaluation/alarm-rules/unit-slots';
import { modeOfUnit, type ModeFound } from '../../evaluation/pipeline/mode-of-unit';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { SlotState } from '../../evaluation/slots/slot-state';

/** The mode of a unit as its slots have it. */
export function modeOfPast(site: CompiledSite, state: SlotState, unit: number): ModeFound {
  const compiled = site.units[unit];
  const holder = site.holders[compiled?.holder ?? -1];
  if (compiled === undefined || holder === undefined) throw new RangeError(`there is no unit ${unit}`);
  return modeOfUnit(state, compileUnitSlots(holder, compiled));
}

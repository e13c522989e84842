import { compileUnitSlots, type UnitSlots } from '../../evaluation/alarm-rules/unit-slots';
import { modeOfUnit, type ModeFound } from '../../evaluation/pipeline/mode-of-unit';
import type { CompiledSite, CompiledUnit } from '../../evaluation/site/compiled-site';
import type { SlotState } from '../../evaluation/slots/slot-state';

/** An hour of a large hall asks for the mode of each unit sixty times. */
const slotsOf = new WeakMap<CompiledUnit, UnitSlots>();

/** The mode of a unit as its slots have it. */
export function modeOfPast(site: CompiledSite, state: SlotState, unit: number): ModeFound {
  const compiled = site.units[unit];
  const holder = site.holders[compiled?.holder ?? -1];
  if (compiled === undefined || holder === undefined) throw new RangeError(`there is no unit ${unit}`);
  const slots = slotsOf.get(compiled) ?? compileUnitSlots(holder, compiled);
  slotsOf.set(compiled, slots);
  return modeOfUnit(state, slots);
}

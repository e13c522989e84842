import type { GroupEntry, UnitEntry } from '../../evaluation/alarm-rules/entry';
import type { GroupEntryId } from '../../evaluation/alarm-rules/entry-ids';
import { compileUnitSlots } from '../../evaluation/alarm-rules/unit-slots';
import { groupPoints } from '../../evaluation/limit-trial/group-points';
import { siteOf } from '../../evaluation/limit-trial/unit-site';
import type { CompiledSite, CompiledUnit } from '../../evaluation/site/compiled-site';

/** What is judged as one: a unit, or a loop or a hall with all its units. */
export interface TrialSubject {
  /** The unit, or the first of the loop or hall, whose setting it has. */
  readonly unit: number;
  /** Place of the loop or hall in the site; null: the unit alone. */
  readonly group: number | null;
}

/** Loop or hall of a unit. */
export const groupOfUnit = ({ per }: GroupEntry, { hall, loop }: CompiledUnit): number =>
  per === 'loop' ? loop : hall;

/** A loop with its units and their halls; or a hall with its units, beside all the others. */
export function siteOfGroup(site: CompiledSite, { per }: GroupEntry, group: number): CompiledSite {
  if (per === 'hall') return siteOf(site, [...site.halls.keys()], site.halls[group]?.units ?? []);
  const units = site.loops[group]?.units ?? [];
  return siteOf(site, [...new Set(units.map((at) => site.units[at]?.hall ?? -1))], units);
}

/** Whether a unit measures what an entry is judged by. */
export function unitHas(site: CompiledSite, unit: CompiledUnit, entry: UnitEntry): boolean {
  const holder = site.holders[unit.holder];
  if (holder === undefined) return false;
  const parts = entry.per === undefined ? [-1] : [...(entry.per === 'branch' ? unit.branches : unit.plates).keys()];
  const slots = compileUnitSlots(holder, unit);
  return parts.some((part) => entry.applies?.(unit, slots, part) ?? true);
}

/** The same of a loop or a hall. */
export function groupHas(site: CompiledSite, entry: GroupEntry, group: number): boolean {
  const own = siteOfGroup(site, entry, group);
  const units = own.units.flatMap((unit) => {
    const holder = own.holders[unit.holder];
    return holder === undefined ? [] : [compileUnitSlots(holder, unit)];
  });
  const id: GroupEntryId = entry.id;
  return groupPoints[id](own, units).some((slot) => slot >= 0);
}

import { unitEntries } from '../alarm-rules/catalogue/catalogue';
import { priorityOfEntry } from '../alarm-rules/priority-of-entry';
import { resolveLimits } from '../alarm-rules/resolve-limits';
import { compileUnitSlots } from '../alarm-rules/unit-slots';
import type { CompiledSite } from '../site/compiled-site';
import { AlarmIndex } from './alarm-index';
import { applicable } from './applicable';

/**
 * How many alarms can be told at all, by hall (null: those of the program): of entries that are on, that the unit measures for and
 * that are alarms and no alerts.
 */
export function configuredAlarms(site: CompiledSite): ReadonlyMap<string | null, number> {
  const index = new AlarmIndex(site);
  const slots = site.units.map((unit) => {
    const holder = site.holders[unit.holder];
    if (holder === undefined) throw new RangeError(`unit ${unit.id} has no holder`);
    return compileUnitSlots(holder, unit);
  });
  const { applies } = applicable(site, index, slots);
  const counts = new Map<string | null, number>();
  for (let alarm = 0; alarm < index.count; alarm += 1) {
    if (applies[alarm] !== 1 || !isAlarm(site, index, alarm)) continue;
    const { hall } = index.identity(alarm);
    counts.set(hall, (counts.get(hall) ?? 0) + 1);
  }
  return counts;
}

function isAlarm(site: CompiledSite, index: AlarmIndex, alarm: number): boolean {
  const point = index.pointOf(alarm);
  if (point >= 0) return index.points[point]?.priority !== null;
  const judged = index.judgedOf(alarm);
  const entry = unitEntries[judged?.place ?? -1];
  if (judged === null || entry === undefined) return true;
  // Of an entry that is judged for parts, the place of the unit says only whether any part is in alarm.
  if (entry.per !== undefined && judged.part < 0) return false;
  const limits = resolveLimits(entry.defaults, site.units[judged.unit]?.limits.get(entry.id));
  return limits.enabled && priorityOfEntry(entry, false) !== null;
}

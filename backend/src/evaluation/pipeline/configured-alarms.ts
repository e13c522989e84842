import type { Priority } from '@ebbline/shared/contract/alarm';
import { catalogue, unitEntries } from '../alarm-rules/catalogue/catalogue';
import type { EntryId } from '../alarm-rules/entry-ids';
import { gradeOf } from '../alarm-rules/priority';
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
  const counts = new Map<string | null, number>();
  for (const { alarm, grade, index } of inUse(site)) {
    if (grade === 'alert') continue;
    const { hall } = index.identity(alarm);
    counts.set(hall, (counts.get(hall) ?? 0) + 1);
  }
  return counts;
}

export interface ConfiguredCount {
  /** In use, alerts too. */
  readonly all: number;
  readonly alarms: number;
  readonly priority1: number;
}

/** The same by entry; one that no part of the site has is left out. */
export function configuredByEntry(site: CompiledSite): ReadonlyMap<string, ConfiguredCount> {
  const counts = new Map<string, ConfiguredCount>();
  for (const { alarm, grade, index } of inUse(site)) {
    const { entry } = index.identity(alarm);
    const { all, alarms, priority1 } = counts.get(entry) ?? { all: 0, alarms: 0, priority1: 0 };
    counts.set(entry, {
      all: all + 1,
      alarms: alarms + (grade === 'alert' ? 0 : 1),
      priority1: priority1 + (grade === 1 ? 1 : 0),
    });
  }
  return counts;
}

interface AlarmInUse {
  readonly alarm: number;
  readonly grade: Priority | 'alert';
  readonly index: AlarmIndex;
}

function* inUse(site: CompiledSite): Generator<AlarmInUse> {
  const index = new AlarmIndex(site);
  const slots = site.units.map((unit) => {
    const holder = site.holders[unit.holder];
    if (holder === undefined) throw new RangeError(`unit ${unit.id} has no holder`);
    return compileUnitSlots(holder, unit);
  });
  const { applies } = applicable(site, index, slots);
  for (let alarm = 0; alarm < index.count; alarm += 1) {
    if (applies[alarm] !== 1) continue;
    const grade = gradeInUse(site, index, alarm);
    if (grade !== null) yield { alarm, grade, index };
  }
}

/** How it is raised without worse signs; null: it is not in use. */
function gradeInUse(site: CompiledSite, index: AlarmIndex, alarm: number): Priority | 'alert' | null {
  const point = index.pointOf(alarm);
  if (point >= 0) return index.points[point]?.priority ?? 'alert';
  const group = index.groupOf(alarm);
  if (group !== null) {
    const { entry } = group;
    const first = (entry.per === 'loop' ? site.loops : site.halls)[group.group]?.units[0] ?? -1;
    const { enabled } = resolveLimits(entry.defaults, site.units[first]?.limits.get(entry.id));
    return enabled && first >= 0 ? gradeOf(entry.severity, entry.timeToRespondS) : null;
  }
  const judged = index.judgedOf(alarm);
  if (judged === null) {
    const { severity, timeToRespondS } = catalogue[index.identity(alarm).entry as EntryId];
    return gradeOf(severity, timeToRespondS);
  }
  const entry = unitEntries[judged.place];
  // Of an entry that is judged for parts, the place of the unit says only whether any part is in alarm.
  if (entry === undefined || (entry.per !== undefined && judged.part < 0)) return null;
  const limits = resolveLimits(entry.defaults, site.units[judged.unit]?.limits.get(entry.id));
  return limits.enabled ? (priorityOfEntry(entry, false) ?? 'alert') : null;
}

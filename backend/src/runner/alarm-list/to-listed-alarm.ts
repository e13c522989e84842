import type { ListedAlarm, ListedSetting } from '@ebbline/shared/contract/alarm-list';
import { catalogue, groupEntries, unitEntries } from '../../evaluation/alarm-rules/catalogue/catalogue';
import { systemEntryIds, type EntryId } from '../../evaluation/alarm-rules/entry-ids';
import * as folding from '../../evaluation/alarm-rules/folding';
import { gradeOf } from '../../evaluation/alarm-rules/priority';
import { priorityOfEntry } from '../../evaluation/alarm-rules/priority-of-entry';
import { alarmClasses } from '../../evaluation/alarm-rules/rationale/alarm-classes';
import { rationaleTable, unitOfSetting } from '../../evaluation/alarm-rules/rationale/rationale-table';
import { scopesOf } from '../../evaluation/alarm-rules/settings/scopes-of';
import type { AuthorisedList } from '../../ports/authorised-list';

/** Why an alarm exists and how it is set, with owner, review and approval as the authorised list has them. */
export function toListedAlarm(
  id: EntryId,
  settings: readonly ListedSetting[],
  list: AuthorisedList | null,
  configured = 0,
): ListedAlarm {
  const entry = catalogue[id];
  const further = rationaleTable[id];
  const rules = alarmClasses[further.class];
  const own = list?.entries.get(id);
  const unitEntry = unitEntries.find((one) => one.id === id);
  const { severity, timeToRespondS, worse } = entry;
  return {
    entry: id,
    title: entry.title,
    judged: judgedOf(id),
    type: further.type,
    cause: entry.cause,
    consequence: entry.consequence,
    actions: (['a', 'b', 'c'] as const).map((shape) => ({ shape, text: entry.action[shape] })),
    confirm: entry.confirm,
    timeToRespondSeconds: timeToRespondS,
    timeNeededSeconds: further.timeNeededS,
    severity,
    priority:
      unitEntry === undefined ? gradeOf(severity, timeToRespondS) : (priorityOfEntry(unitEntry, false) ?? 'alert'),
    worse:
      worse === null
        ? null
        : {
            severity: worse.severity,
            timeToRespondSeconds: worse.timeToRespondS,
            when: worse.when,
            priority:
              unitEntry === undefined
                ? gradeOf(worse.severity, worse.timeToRespondS)
                : (priorityOfEntry(unitEntry, true) ?? 'alert'),
          },
    class: further.class,
    classTitle: rules.title,
    highlyManaged: rules.highlyManaged,
    latching: entry.latching,
    basis: entry.basis,
    designLimit: further.designLimit,
    stateDependent: further.stateDependent,
    offInModes: [...(unitEntry?.offInModes ?? [])],
    suppressedBy: suppressedBy(id),
    owner: own?.owner ?? rules.owner,
    reviewBy: own?.reviewBy ?? (list === null ? null : monthsAfter(list.approvedOn, rules.reviewMonths)),
    changeLink: own?.changeLink ?? null,
    unit_of_measure: unitOfSetting(id),
    side: further.setting.side,
    hasDeadband: further.setting.deadband,
    changeable: further.setting.changeable,
    scopes: [...scopesOf(id)],
    configured,
    settings: [...settings],
  };
}

function judgedOf(id: EntryId): ListedAlarm['judged'] {
  if (id === 'INS-1') return 'point';
  if (id === 'COM-1') return 'gateway';
  if (systemEntryIds.some((system) => system === id)) return 'program';
  const group = groupEntries.find((entry) => entry.id === id);
  return group?.per ?? unitEntries.find((entry) => entry.id === id)?.per ?? 'unit';
}

const foldings: readonly Readonly<Partial<Record<EntryId, readonly EntryId[]>>>[] = [
  folding.foldsUnder,
  folding.foldsUnderEarlier,
  folding.foldsOnPowerLost,
  folding.foldsOnCirculation,
  folding.foldsAcrossLoop,
  { 'INS-1': ['COM-1'] },
];

const suppressedBy = (id: EntryId): string[] => [...new Set(foldings.flatMap((table) => table[id] ?? []))];

/** The same day so many months on, or the last one of a shorter month. */
export function monthsAfter(day: string, months: number): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const lastOfMonth = new Date(Date.UTC(year, month - 1 + months + 1, 0)).getUTCDate();
  const then = new Date(Date.UTC(year, month - 1 + months, Math.min(date, lastOfMonth)));
  return then.toISOString().slice(0, 10);
}

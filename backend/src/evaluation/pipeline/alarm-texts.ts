import { catalogue } from '../alarm-rules/catalogue/catalogue';
import { entryIds, type EntryId } from '../alarm-rules/entry-ids';
import type { Rationale } from '../alarm-rules/entry';
import { longestTimeS, priorityOf } from '../alarm-rules/priority';
import type { CompiledSite, CompiledUnit } from '../site/compiled-site';
import type { AlertRecord } from './alert-record';
import type { AlarmRecord } from './outputs';

/** What is said to a person about an alarm, for HTTP and the live feed: the words of the contract's `Alarm`. */
export interface AlarmTexts {
  readonly title: string;
  readonly cause: string;
  readonly consequence: string;
  /** What to do first: the site's own procedure where the site file gives one, else by plant shape. */
  readonly action: string;
  readonly timeToRespondSeconds: number;
}

/** The same of an alert. */
export type AlertTexts = Omit<AlarmTexts, 'timeToRespondSeconds'>;

export function alertTexts(site: CompiledSite, alert: AlertRecord): AlertTexts {
  const entry = entryOf(alert.entry);
  if (entry === null) return outdated(alert.entry);
  const unit = site.units.find(({ id }) => id === alert.unit);
  const { title, cause, consequence } = entry;
  return { title, cause, consequence, action: actionAt(unit, entry) };
}

/** The texts of a standing alarm. An entry that the catalogue has no more (an old journal) is said to be so. */
export function alarmTexts(site: CompiledSite, record: AlarmRecord): AlarmTexts {
  const entry = entryOf(record.entry);
  if (entry === null) return outdated(record.entry);
  const unit = unitOf(site, record);
  const worse = entry.worse !== null && isWorse(record, entry) ? entry.worse : null;
  return {
    title: entry.title,
    cause: entry.cause,
    consequence: entry.consequence,
    action: actionAt(unit, entry),
    timeToRespondSeconds: worse?.timeToRespondS ?? timeOf(record, entry),
  };
}

/** Where the time is computed it may be shorter than what is usual: then it is at most what its priority leaves. */
const timeOf = ({ priority }: AlarmRecord, { severity, timeToRespondS }: Rationale): number =>
  Math.min(timeToRespondS, longestTimeS(severity, priority));

function entryOf(id: string): Rationale | null {
  const known: EntryId | undefined = entryIds.find((entry) => entry === id);
  return known === undefined ? null : catalogue[known];
}

/** Empty says that here it is the one of the catalogue, whatever the hall or the site has. */
function actionAt(unit: CompiledUnit | undefined, entry: Rationale): string {
  const own = unit?.limits.get(entry.id)?.action ?? '';
  return own === '' ? entry.action[unit?.shape ?? 'a'] : own;
}

/** The unit that the alarm is about; for a gateway or a hall one of those that it concerns. */
function unitOf(site: CompiledSite, record: AlarmRecord): CompiledUnit | undefined {
  if (record.unit !== null) return site.units.find((unit) => unit.id === record.unit);
  const gateway = site.gateways.find(({ id }) => record.alarm === `${id}:${record.entry}`);
  const hall = site.halls.find(({ id }) => id === record.hall);
  return site.units[gateway?.units[0] ?? hall?.units[0] ?? -1];
}

const isWorse = (record: AlarmRecord, entry: Rationale): boolean =>
  entry.worse !== null && record.priority === priorityOf(entry.worse.severity, entry.worse.timeToRespondS);

const outdated = (entry: string): AlarmTexts => ({
  title: `Alarm of an entry that is no longer in the catalogue: ${entry}`,
  cause: 'Raised by an earlier version of the catalogue.',
  consequence: 'It is not judged any more and does not end by itself.',
  action: 'Look at the unit as for any alarm, then acknowledge this one.',
  timeToRespondSeconds: 3600,
});

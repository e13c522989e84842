import type { Alarm, JournalRow } from '@ebbline/shared/contract/alarm';
import type { Alert } from '@ebbline/shared/contract/alert';
import type { Seen, Taboo } from './story';

/** An alarm of this entry that stands, of a unit where one is named. */
export const standing = ({ alarms }: Seen, entry: string, unit?: string): Alarm | undefined =>
  alarms.find((alarm) => alarm.entry === entry && (unit === undefined || alarm.unit === unit));

export const alerted = ({ alerts }: Seen, entry: string): Alert | undefined =>
  alerts.find((alert) => alert.entry === entry);

/** Not folded under another one. */
export const standsAlone = ({ foldedUnder }: Alarm): boolean => (foldedUnder ?? null) === null;

/** Title, cause, action and what is said of the case, as one text. */
export const wordsOf = (alarm: Alarm | Alert | undefined): string =>
  alarm === undefined ? '' : [alarm.title, alarm.where, alarm.cause, alarm.action, alarm.detail].join(' | ');

/** Entries in the order in which they were raised and called for someone: those that folded under another one did not. */
export const calledFor = ({ journal }: Seen): string[] => raisedRows(journal).map(({ entry }) => entry ?? '');

export const raisedRows = (journal: readonly JournalRow[]): JournalRow[] =>
  journal.filter(({ kind, from, to }) => kind === 'transition' && from === 'normal' && to === 'unacknowledged');

/** A value in SI, NaN where it is not there or bad. */
export function valueOf(seen: Seen, unit: string, point: string): number {
  const reading = seen.reading(unit, point);
  return reading === undefined || reading.quality === 'bad' ? Number.NaN : (reading.value ?? Number.NaN);
}

const ventFirst = /(^|[.;] )(vent|open the vent|break the vacuum|stop the vacuum|switch off the vacuum)/i;

/** In every story: venting the loop or stopping the vacuum source is never what is told to be done first. */
export const neverAdviseVenting: Taboo = {
  what: 'advice to vent the loop or to stop the vacuum source',
  see: ({ alarms, alerts }) => [...alarms, ...alerts].some(({ action }) => ventFirst.test(action)),
};

/** An alarm of this entry that stands by itself. */
export const callsFor = (entry: string, what: string): Taboo => ({
  what,
  see: ({ alarms }) => alarms.some((alarm) => alarm.entry === entry && standsAlone(alarm)),
});

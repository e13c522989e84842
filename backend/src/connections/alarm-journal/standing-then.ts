import type { AlarmRecord } from '../../evaluation/pipeline/outputs';
import type { AlertRecord } from '../../evaluation/pipeline/alert-record';
import type { PermitRecord } from '../../evaluation/pipeline/permit-record';
import { noteCauses } from '../../ports/note-entry';
import type { AlarmJournal, StandingThen } from '../../ports/alarm-journal';
import { alertName, alertWent, isAlertName } from './alert-entry';
import { isGuidedName } from './guided-entry';
import type { JournalDatabase } from './journal-database';
import { isPermitName, permitClosed } from './permit-entry';
import { stoodWhenSealed } from './standing-when-sealed';
import { isTightnessName } from './tightness-entry';
import { standingUpdated } from './to-journal-entry';

/** So many moments are kept: who goes through time asks about the same rows again and again. */
const mostKept = 32;

const ofAlert = "coalesce(cause, '') IN ('alertCame', 'alertWent')";
/** Rows after which an alarm stands as its record says, or not at all; what is between is said by a later row of its batch. */
const decides = `(record IS NOT NULL OR to_state = 'normal' OR cause IN ('${permitClosed}', '${alertWent}'))`;
/** A row of this kind has the time since when the alarm is so; it was true from the row before it on. */
const isUpdate = `(kind = 'system' AND reason IS '${standingUpdated}')`;
/** What people write down of an alarm speaks of any time, and says nothing of how it stands. */
const isNote = `coalesce(cause, '') IN (${noteCauses.map((cause) => `'${cause}'`).join(', ')})`;

/**
 * Adds up what stood at a time: the last row of each name up to the last that had happened by then, each found by its index. What
 * stands to this day since before is read as it stands; what stood when the sealed rows end, from what was kept of them. Nothing is walked, so that a year of rows costs a look-up a name.
 */
export function standingThen(database: JournalDatabase): AlarmJournal['standingAt'] {
  const sealed = database.prepare('SELECT 1 FROM archive LIMIT 1').raw();
  const firstEvent = database
    .prepare(
      `SELECT happened_ms FROM journal WHERE alarm IS NOT NULL AND NOT ${isUpdate} AND NOT ${isNote}
       ORDER BY sequence LIMIT 1`,
    )
    .raw();
  const lastBy = database
    .prepare(
      `SELECT sequence FROM journal INDEXED BY journal_happened
       WHERE happened_ms <= ? AND alarm IS NOT NULL AND NOT ${isUpdate} AND NOT ${isNote}
       ORDER BY happened_ms DESC, sequence DESC LIMIT 1`,
    )
    .raw();
  const nextEvent = database
    .prepare(`SELECT sequence FROM journal WHERE sequence > ? AND NOT ${isUpdate} ORDER BY sequence LIMIT 1`)
    .raw();
  const lastOfAll = database.prepare('SELECT max(sequence) FROM journal').raw();
  const names = database
    .prepare(
      `WITH RECURSIVE name(alarm) AS (
         SELECT min(alarm) FROM journal WHERE alarm IS NOT NULL
         UNION ALL
         SELECT (SELECT min(journal.alarm) FROM journal WHERE journal.alarm > name.alarm) FROM name WHERE name.alarm IS NOT NULL
       ) SELECT alarm FROM name WHERE alarm IS NOT NULL`,
    )
    .raw();
  const lastOf = (channel: string) =>
    database
      .prepare(
        `SELECT record FROM journal WHERE alarm = ? AND sequence <= ? AND ${channel} AND ${decides}
         ORDER BY sequence DESC LIMIT 1`,
      )
      .raw();
  const [lastAlarm, lastAlert] = [lastOf(`NOT ${ofAlert}`), lastOf(ofAlert)];
  const since = database.prepare('SELECT alarm, record FROM standing WHERE sequence <= ?').raw();

  /** The last row that had happened, with the updates that came with it; 0 where there is none. */
  const cut = (atMs: number): number => {
    const [sequence] = (lastBy.get(atMs) as [number] | undefined) ?? [0];
    if (sequence === 0) return 0;
    const next = nextEvent.get(sequence) as [number] | undefined;
    return next === undefined ? (lastOfAll.get() as [number])[0] : next[0] - 1;
  };
  const beforeThat = stoodWhenSealed(database);
  const kept = new Map<number, StandingThen>();

  return (atMs) => {
    const [firstMs] = (firstEvent.get() as [number] | undefined) ?? [Infinity];
    if (sealed.get() !== undefined && atMs < firstMs) return null;
    const sequence = cut(atMs);
    const known = kept.get(sequence);
    if (known !== undefined) return known;
    const records = beforeThat();
    for (const [name, record] of since.all(sequence) as [string, string][]) records.set(name, record);
    for (const [name] of names.all() as [string][]) {
      put(records, name, lastAlarm.get(name, sequence) as [string | null] | undefined);
      put(records, alertName(name), lastAlert.get(name, sequence) as [string | null] | undefined);
    }
    const then = sorted(sequence, records);
    kept.set(sequence, then);
    if (kept.size > mostKept) kept.delete(kept.keys().next().value ?? sequence);
    return then;
  };
}

/** @param row undefined: the name has no row up to then; a null record: it had gone */
function put(records: Map<string, string>, name: string, row: [string | null] | undefined): void {
  if (row === undefined) return;
  if (row[0] === null) records.delete(name);
  else records.set(name, row[0]);
}

function sorted(sequence: number, records: ReadonlyMap<string, string>): StandingThen {
  const alarms: AlarmRecord[] = [];
  const alerts: AlertRecord[] = [];
  const permits: PermitRecord[] = [];
  for (const [name, record] of records) {
    if (isAlertName(name)) alerts.push(JSON.parse(record) as AlertRecord);
    else if (isPermitName(name)) permits.push(JSON.parse(record) as PermitRecord);
    else if (!isTightnessName(name) && !isGuidedName(name)) alarms.push(JSON.parse(record) as AlarmRecord);
  }
  return { sequence, alarms, alerts, permits };
}

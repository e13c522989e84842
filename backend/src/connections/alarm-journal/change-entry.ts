import type { JournalEntry } from './journal-entry';
import { storedText } from './stored-text';
import { nothing } from './to-journal-entry';

/** A change of something that stands among the alarms and is none: a permit, a test. */
interface Change {
  readonly cause: JournalEntry['cause'];
  /** Its name there, which no alarm can have. */
  readonly name: string;
  readonly unit: string;
  readonly sinceMs: number;
  readonly atMs: number;
  /** Null: the program did it. */
  readonly actor: string | null;
  readonly station: string | null;
  readonly said: string;
  readonly comment: string | null;
  /** As it stands after the change, so that a restart finds it again; null: nothing is to be found. */
  readonly record: object | null;
}

/** Its row in the journal. */
export const changeEntry = (change: Change, wallMs: number): JournalEntry => ({
  ...nothing,
  recordedMs: Math.round(wallMs),
  happenedMs: Math.round(change.atMs),
  kind: change.actor === null ? 'system' : 'action',
  cause: change.cause,
  alarm: storedText(change.name),
  unit: storedText(change.unit),
  sinceMs: Math.round(change.sinceMs),
  actor: storedText(change.actor),
  station: storedText(change.station),
  reason: storedText(
    change.comment === null || change.comment === '' ? change.said : `${change.said}: ${change.comment}`,
  ),
  record: change.record === null ? null : storedText(JSON.stringify(change.record)),
});

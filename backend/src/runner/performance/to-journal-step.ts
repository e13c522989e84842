import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { modeOfCause, type JournalStep } from '../../evaluation/alarm-performance/journal-step';

/** What the figures need of a row. */
export const toJournalStep = (row: JournalRow): JournalStep => ({
  sequence: row.sequence,
  atMs: Date.parse(row.sourceTime),
  kind: row.kind,
  cause: row.cause ?? null,
  alarm: row.alarm,
  unit: row.unit,
  hall: row.hall ?? null,
  entry: row.entry,
  from: row.from,
  to: row.to,
  priority: row.priority,
  foldedUnder: row.foldedUnder ?? null,
  sinceMs: row.since === undefined || row.since === null ? null : Date.parse(row.since),
  actor: row.actor,
  mode: row.facts?.toMode ?? modeOfCause[row.cause ?? ''] ?? null,
});

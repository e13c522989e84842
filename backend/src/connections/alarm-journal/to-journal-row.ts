import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { JournalFacts } from '@ebbline/shared/contract/journal-facts';
import type { ChainedEntry } from './journal-entry';

/** A row as the contract shows it. */
export function toJournalRow(entry: ChainedEntry): JournalRow {
  return {
    sequence: entry.sequence,
    time: new Date(entry.recordedMs).toISOString(),
    sourceTime: new Date(entry.happenedMs).toISOString(),
    kind: entry.kind,
    alarm: entry.alarm,
    unit: entry.unit,
    entry: entry.entry,
    from: entry.fromState,
    to: entry.toState,
    priority: entry.priority,
    value: entry.value,
    limit: entry.limit,
    unit_of_measure: entry.unitOfMeasure,
    where: entry.place,
    actor: entry.actor,
    station: entry.station,
    reason: entry.reason,
    hall: entry.hall,
    cause: entry.cause,
    since: entry.sinceMs === null ? null : new Date(entry.sinceMs).toISOString(),
    foldedUnder: entry.foldedUnder,
    facts: entry.facts === null ? null : (JSON.parse(entry.facts) as JournalFacts),
    previousHash: entry.previousHash,
    hash: entry.hash,
  };
}

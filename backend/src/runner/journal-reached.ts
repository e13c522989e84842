import type { AlarmJournal } from '../ports/alarm-journal';
import { isNoteCause } from '../ports/note-entry';

/** So many of the newest rows are looked at; rows about the program itself may stand among them. */
const rowsLookedAt = 100;

/**
 * Tick time that the program before this one had reached at least, ms: when what the newest row about an alarm, alert, permit or test
 * says happened. Newest by its place in the chain: times may go back where a clock was set. NaN where there is no such row.
 */
export function journalReached(journal: Pick<AlarmJournal, 'page'>): number {
  const query = { fromMs: null, toMs: null, after: null, order: 'newest', limit: rowsLookedAt, audit: false } as const;
  const newest = journal.page(query).rows.find(({ alarm, cause }) => alarm !== null && !isNoteCause(cause));
  return newest === undefined ? Number.NaN : Date.parse(newest.sourceTime);
}

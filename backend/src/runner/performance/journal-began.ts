import type { AlarmJournal } from '../../ports/alarm-journal';
import { isNoteCause } from '../../ports/note-entry';

/**
 * When the first row of the journal that is at hand says that it happened, ms; whatever it is about. A note speaks of any time, and was
 * written when it was recorded. NaN where there is no row.
 */
export function journalBegan(journal: Pick<AlarmJournal, 'page'>): number {
  const query = { fromMs: null, toMs: null, after: null, order: 'oldest', limit: 1 } as const;
  const [first] = journal.page(query).rows;
  if (first === undefined) return Number.NaN;
  return Date.parse(isNoteCause(first.cause) ? first.time : first.sourceTime);
}

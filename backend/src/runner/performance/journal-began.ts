import type { AlarmJournal } from '../../ports/alarm-journal';

/** When the first row of the journal that is at hand says that it happened, ms; whatever it is about. NaN where there is none. */
export function journalBegan(journal: Pick<AlarmJournal, 'page'>): number {
  const query = { fromMs: null, toMs: null, after: null, order: 'oldest', limit: 1 } as const;
  const [first] = journal.page(query).rows;
  return first === undefined ? Number.NaN : Date.parse(first.sourceTime);
}

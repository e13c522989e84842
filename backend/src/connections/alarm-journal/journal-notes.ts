import { followingCauses, noteCauses } from '../../ports/note-entry';
import type { JournalDatabase } from './journal-database';
import { chainedEntry, rowColumns, type ChainedEntry, type StoredValues } from './journal-entry';

/** The names hold no quote; they are spelled as the indices of schema 4 have them, or those are not used. */
const among = (causes: readonly string[]): string => `cause IN (${causes.map((cause) => `'${cause}'`).join(', ')})`;

/** Reads rows of notes and handovers by the time that they speak of, with all that follow one: those are few. */
export function journalNotes(database: JournalDatabase): (fromMs: number, toMs: number) => ChainedEntry[] {
  const columns = rowColumns.join(', ');
  const spoken = `SELECT ${columns} FROM journal WHERE ${among(noteCauses)} AND happened_ms >= ?1 AND happened_ms < ?2`;
  const followed = `SELECT ${columns} FROM journal WHERE ${among(followingCauses)}`;
  const rows = database.prepare(`${spoken} UNION ${followed} ORDER BY sequence`).raw();
  return (fromMs, toMs) => (rows.all(fromMs, toMs) as StoredValues[]).map(chainedEntry);
}

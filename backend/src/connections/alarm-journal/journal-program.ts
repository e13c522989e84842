import type { JournalDatabase } from './journal-database';
import { chainedEntry, rowColumns, type ChainedEntry, type StoredValues } from './journal-entry';

/**
 * Reads the newest row of the program's own runs, from what was kept of sealed rows where no other is left; null where none
 * can be searched. Causes are spelled as the index of schema 5 has them.
 */
export function journalProgram(database: JournalDatabase): () => ChainedEntry | null {
  const newestOf = (table: 'journal' | 'kept') =>
    database
      .prepare(
        `SELECT ${rowColumns.join(', ')} FROM ${table} WHERE cause IN ('programStarted', 'programEnded')
         ORDER BY sequence DESC LIMIT 1`,
      )
      .raw();
  const [newest, kept] = [newestOf('journal'), newestOf('kept')];
  return () => {
    const stored = (newest.get() ?? kept.get()) as StoredValues | undefined;
    return stored === undefined ? null : chainedEntry(stored);
  };
}

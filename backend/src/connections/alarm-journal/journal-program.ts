import type { JournalDatabase } from './journal-database';
import { chainedEntry, rowColumns, type ChainedEntry, type StoredValues } from './journal-entry';

/** Reads the newest row of the program's own runs; null where none can be searched. Causes are spelled as the index of schema 5 has them. */
export function journalProgram(database: JournalDatabase): () => ChainedEntry | null {
  const newest = database
    .prepare(
      `SELECT ${rowColumns.join(', ')} FROM journal WHERE cause IN ('programStarted', 'programEnded')
       ORDER BY sequence DESC LIMIT 1`,
    )
    .raw();
  return () => {
    const stored = newest.get() as StoredValues | undefined;
    return stored === undefined ? null : chainedEntry(stored);
  };
}

import Database from 'libsql';
import { CodedError } from '@ebbline/shared/errors/coded-error';

export type JournalDatabase = InstanceType<typeof Database>;

/**
 * Opens the file so that a commit is on the disk before it returns: write-ahead log with
 * synchronous=FULL, which SQLite documents as durable across a loss of power (sqlite.org/pragma.html).
 *
 * Plain prepared statements rather than a query builder: the port is synchronous (a transition is shown
 * only after its commit, in the same turn of the loop) and the builders at hand only run asynchronously.
 */
export function openJournalDatabase(path: string): JournalDatabase {
  let database: JournalDatabase;
  try {
    database = new Database(path);
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
  } catch (cause) {
    throw new CodedError('JOURNAL_OPEN_FAILED', `cannot open ${path}; check that the folder is writable`, { cause });
  }
  const [synchronous] = database.prepare('PRAGMA synchronous').raw().get() as [number];
  if (synchronous !== 2) {
    throw new CodedError('JOURNAL_OPEN_FAILED', `${path} does not take synchronous=FULL, entries would not be safe`);
  }
  return database;
}

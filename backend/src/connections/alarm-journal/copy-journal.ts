import Database from 'libsql';

/** Milliseconds that a commit of a running program is waited for. */
const busyMs = 5000;

/**
 * Writes the journal as it stands at one moment to a new file, of a running program too: every committed row, the schema version
 * and the triggers, without the log beside it (sqlite.org/lang_vacuum.html, VACUUM INTO). Throws what the engine throws.
 */
export function copyJournal(from: string, to: string): void {
  const database = new Database(from, { timeout: busyMs });
  try {
    database.prepare('VACUUM INTO ?').run(to);
  } finally {
    database.close();
  }
}

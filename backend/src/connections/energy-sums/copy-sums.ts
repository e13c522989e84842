import { existsSync } from 'node:fs';
import Database from 'libsql';

/** Milliseconds that a commit of a running program is waited for. */
const busyMs = 5000;

/** Writes the sums as they stand at one moment to a new file, of a running program too (sqlite.org/lang_vacuum.html, VACUUM INTO). */
export function copySums(from: string, to: string): boolean {
  if (!existsSync(from)) return false;
  const database = new Database(from, { timeout: busyMs });
  try {
    database.prepare('VACUUM INTO ?').run(to);
    return true;
  } finally {
    database.close();
  }
}

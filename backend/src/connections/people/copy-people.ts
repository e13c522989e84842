import { existsSync } from 'node:fs';
import Database from 'libsql';

/** Milliseconds that a commit of a running program is waited for. */
const busyMs = 5000;

/**
 * Writes people and tokens as they stand at one moment to a new file, of a running program too (sqlite.org/lang_vacuum.html, VACUUM
 * INTO). Sessions and links are left out: a copy signs nobody in, and no link works twice. Returns the schema version; null: there
 * is no such file. Throws what the engine throws.
 */
export function copyPeople(from: string, to: string): number | null {
  if (!existsSync(from)) return null;
  const database = new Database(from, { timeout: busyMs });
  try {
    database.prepare('VACUUM INTO ?').run(to);
  } finally {
    database.close();
  }
  const copy = new Database(to);
  try {
    copy.exec('DELETE FROM session; DELETE FROM link; VACUUM');
    const [version] = copy.prepare('PRAGMA user_version').raw().get() as [number];
    return version;
  } finally {
    copy.close();
  }
}

import { existsSync, rmSync } from 'node:fs';
import Database from 'libsql';

/** Milliseconds that a commit of a running program is waited for. */
const busyMs = 5000;

/**
 * Writes the sums as they stand at one moment to a new file, of a running program too (sqlite.org/lang_vacuum.html, VACUUM INTO). Of a
 * file that is damaged there is no copy: nothing in it is an original. Throws what the engine throws otherwise.
 */
export function copySums(from: string, to: string): 'copied' | 'absent' | 'damaged' {
  if (!existsSync(from)) return 'absent';
  try {
    const database = new Database(from, { timeout: busyMs });
    try {
      database.prepare('VACUUM INTO ?').run(to);
    } finally {
      database.close();
    }
    return 'copied';
  } catch (fault) {
    if (!isDamage(fault)) throw fault;
    for (const end of ['', '-journal', '-wal', '-shm']) rmSync(`${to}${end}`, { force: true });
    return 'damaged';
  }
}

/** By the engine's codes (sqlite.org/rescode.html): a disk that is full, or a file that is busy, is another matter. */
const isDamage = (fault: unknown): boolean =>
  fault instanceof Error && 'code' in fault && /^SQLITE_(CORRUPT|NOTADB)/.test(String(fault.code));

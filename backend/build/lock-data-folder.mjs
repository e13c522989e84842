/**
 * One program a data folder. The lock is an exclusive transaction on a small database: the operating
 * system frees it when the process ends, however it ends, so a killed program leaves nothing to clean up.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'libsql';

/** @returns {{ ok: true, release: () => void } | { ok: false, message: string }} */
export function lockDataFolder(folder) {
  try {
    mkdirSync(folder, { recursive: true });
    const database = new Database(join(folder, 'lock.db'), { timeout: 0 });
    try {
      database.exec('BEGIN EXCLUSIVE');
    } catch (error) {
      database.close();
      if (/locked|busy/i.test(String(error))) return { ok: false, message: inUse(folder) };
      throw error;
    }
    return { ok: true, release: () => database.close() };
  } catch (error) {
    return {
      ok: false,
      message: `The data folder ${folder} can't be written to (${error.code ?? error.message}). Set EBBLINE_DATA to a folder that can.`,
    };
  }
}

const inUse = (folder) =>
  `Another Ebbline runs on the data folder ${folder}. End that one first, or set EBBLINE_DATA to another folder for this one.`;

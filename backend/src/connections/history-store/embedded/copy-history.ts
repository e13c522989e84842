import { constants, existsSync } from 'node:fs';
import { copyFile, mkdir, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { databaseFile, keptNames } from './kept-names';
import { databaseMark, sameDatabase } from './database-mark';

/** Layout of the tables of history; raised by whoever changes what an older program reads wrongly. */
export const historySchemaVersion = 1;

export interface HistoryCopyOptions {
  /** The store's folder; a program may be writing to it. */
  readonly from: string;
  /** Is not there yet. */
  readonly to: string;
  readonly attempts?: number;
  readonly pauseMs?: number;
}

export interface HistoryCopy {
  /** False: there was no history. */
  readonly found: boolean;
  /** Sealed files that the history names and that are not there: they can't be copied. */
  readonly missing: readonly string[];
}

/**
 * Copies history while a program writes to it. The file and its log are taken as a kill would leave them, again where the file
 * changed meanwhile (the log is folded into it each 128 MB, and by sealing); the copy is opened, which replays the log, and names
 * the sealed files, which never change. One that sealing replaced before it was copied makes the copy begin again.
 * @throws CodedError HISTORY_COPY_FAILED where it never came to rest, or the copy can't be opened
 */
export async function copyHistory(options: HistoryCopyOptions): Promise<HistoryCopy> {
  const { from, to, attempts = 20, pauseMs = 250 } = options;
  if (!existsSync(join(from, databaseFile))) return { found: false, missing: [] };
  let missing: string[] = [];
  let cause: unknown = null;
  for (let attempt = 1; attempt <= attempts; attempt++) {
    if (attempt > 1) await wait(pauseMs);
    await rm(to, { recursive: true, force: true });
    try {
      if (!(await copyDatabase(from, to))) continue;
      const before = missing;
      missing = await copySealed(from, to, await keptNames(to));
      // What is missing twice was not replaced but lost.
      if (missing.length === 0 || missing.join() === before.join()) return { found: true, missing };
    } catch (fault) {
      cause = fault;
    }
  }
  throw new CodedError(
    'HISTORY_COPY_FAILED',
    `${from} could not be copied in ${attempts} attempts; look at its disk and permissions, or stop Ebbline and try again`,
    { cause },
  );
}

/** False where the file changed while it was copied. */
async function copyDatabase(from: string, to: string): Promise<boolean> {
  await mkdir(to, { recursive: true });
  const before = await databaseMark(from);
  if (before === null) return false;
  for (const name of [databaseFile, `${databaseFile}.wal`])
    if (existsSync(join(from, name))) await copyOne(join(from, name), join(to, name));
  const after = await databaseMark(from);
  return after !== null && sameDatabase(before, after);
}

async function copySealed(from: string, to: string, names: readonly string[]): Promise<string[]> {
  const missing: string[] = [];
  for (const name of names) {
    await mkdir(dirname(join(to, name)), { recursive: true });
    if (!(await copyOne(join(from, name), join(to, name)))) missing.push(name);
  }
  return missing;
}

/** False where there is no such file (any more). */
async function copyOne(from: string, to: string): Promise<boolean> {
  try {
    await copyFile(from, to, constants.COPYFILE_FICLONE);
    return true;
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return false;
    throw fault;
  }
}

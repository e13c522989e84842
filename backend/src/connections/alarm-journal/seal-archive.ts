import { mkdir, open, readdir, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { setImmediate as nextTurn } from 'node:timers/promises';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { SealDue } from '../../ports/alarm-journal';
import { failpoint } from '../../ports/failpoint';
import { archiveName, archiveNamePattern, archiveText, readArchive, sha256Of } from './archive-file';
import type { JournalDatabase } from './journal-database';
import { chainedEntry, rowColumns, type ChainedEntry, type StoredValues } from './journal-entry';
import { journalHash } from './journal-hash';
import type { ArchiveRow, JournalReading } from './journal-reading';
import { neededCauses } from './needed-rows';
import { rowsThatStood, stoodWhenSealed } from './standing-when-sealed';

/** So many rows a file: taking them out is one transaction, in which nothing else is written. */
export const rowsAFile = 2000;
const readAtOnce = 250;
const compressed = promisify(gzip);

/**
 * Seals the oldest rows that are due: written beside, brought to the disk, read back and compared, and only then taken out, in one
 * transaction with the record of the file. A kill leaves either all of them in the journal, and a file that is written anew, or all
 * of them in the file.
 */
export async function sealArchive(
  database: JournalDatabase,
  reading: JournalReading,
  folder: string,
  due: SealDue,
): Promise<number> {
  const anchor = reading.archives().at(-1)?.last ?? 0;
  const rows = await rowsDue(database, anchor, due);
  const [oldest, newest] = [rows[0], rows.at(-1)];
  if (oldest === undefined || newest === undefined) return 0;
  const since = rows.find(({ recordedMs }) => recordedMs <= due.wallMs)?.recordedMs ?? due.beforeMs;
  if (rows.length < rowsAFile && since >= due.urgentMs) return 0;
  try {
    await mkdir(folder, { recursive: true, mode: 0o700 });
    await clearLeftovers(folder, anchor, reading);
    const file = archiveName(oldest.sequence, newest.sequence);
    const sha256 = await writeSealed(folder, file, archiveText(rows));
    const { previousHash } = oldest;
    const [first, last, hash] = [oldest.sequence, newest.sequence, newest.hash];
    const archive = { first, last, previousHash, hash, file, sha256, sealedMs: Math.round(due.wallMs) };
    compareSealed(folder, archive, rows);
    failpoint('journal-archive-written');
    takeOut(database, archive, rows);
    failpoint('journal-archive-after-commit');
  } catch (cause) {
    const said = cause instanceof Error ? cause.message : String(cause);
    const message = `rows ${oldest.sequence} to ${newest.sequence} could not be sealed into ${folder} (${said}); check disk space and permissions`;
    throw new CodedError('JOURNAL_SEAL_FAILED', message, { cause });
  }
  return rows.length;
}

/**
 * The rows behind the newest sealed one, as long as they are old, read in pieces between which other work is done. A row of a time that is
 * still to come was written by a clock that was wrong: it is as old as those around it, and goes with the next one that is due.
 */
async function rowsDue(
  database: JournalDatabase,
  anchor: number,
  { beforeMs, wallMs }: SealDue,
): Promise<ChainedEntry[]> {
  const select = database
    .prepare(`SELECT ${rowColumns.join(', ')} FROM journal WHERE sequence > ? ORDER BY sequence LIMIT ?`)
    .raw();
  const due: ChainedEntry[] = [];
  while (due.length < rowsAFile) {
    const piece = (select.all(due.at(-1)?.sequence ?? anchor, readAtOnce) as StoredValues[]).map(chainedEntry);
    const tooYoung = piece.findIndex(({ recordedMs }) => recordedMs >= beforeMs && recordedMs <= wallMs);
    due.push(...(tooYoung < 0 ? piece : piece.slice(0, tooYoung)));
    if (tooYoung >= 0 || piece.length < readAtOnce) break;
    await nextTurn();
  }
  due.length = Math.min(due.length, rowsAFile);
  const known = due.map(({ recordedMs }) => recordedMs < beforeMs).lastIndexOf(true);
  const full = due.length === rowsAFile && isDueBehind(database, rowsAFile + anchor, beforeMs, wallMs);
  return full ? due : due.slice(0, known + 1);
}

/** Whether the next row whose time can be believed is due. */
function isDueBehind(database: JournalDatabase, sequence: number, beforeMs: number, wallMs: number): boolean {
  const next = database
    .prepare('SELECT recorded_ms FROM journal WHERE sequence > ? AND recorded_ms <= ? ORDER BY sequence LIMIT 1')
    .raw()
    .get(sequence, wallMs) as [number] | undefined;
  return next !== undefined && next[0] < beforeMs;
}

/** What an earlier attempt left: files that were never recorded, of rows that still stand in the journal. */
async function clearLeftovers(folder: string, anchor: number, reading: JournalReading): Promise<void> {
  const head = reading.head().sequence;
  for (const name of await readdir(folder)) {
    const [, first, last] = archiveNamePattern.exec(name.replace(/\.writing$/, '')) ?? [];
    if (Number(first) === anchor + 1 && Number(last) <= head) await rm(join(folder, name), { force: true });
  }
}

async function writeSealed(folder: string, file: string, text: string): Promise<string> {
  const bytes = await compressed(text);
  const writing = join(folder, `${file}.writing`);
  const handle = await open(writing, 'wx', 0o400);
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
  failpoint('journal-archive-before-rename');
  await rename(writing, join(folder, file));
  const names = await open(folder, 'r');
  try {
    await names.sync();
  } finally {
    await names.close();
  }
  return sha256Of(bytes);
}

/** Nothing is taken out on the word of a write: the file is read back, and each row compared and reckoned again. */
function compareSealed(folder: string, archive: ArchiveRow, rows: readonly ChainedEntry[]): void {
  const read = readArchive(folder, archive);
  if (!read.ok) throw new CodedError('JOURNAL_SEAL_FAILED', read.fault.message);
  let { previousHash } = archive;
  rows.forEach((row, place) => {
    const sealed = read.value[place];
    const whole =
      sealed?.hash === row.hash &&
      sealed.previousHash === previousHash &&
      sealed.hash === journalHash(row.sequence, sealed, previousHash);
    if (!whole)
      throw new CodedError('JOURNAL_SEAL_FAILED', `row ${row.sequence} is not in ${archive.file} as it was written`);
    previousHash = row.hash;
  });
}

function takeOut(database: JournalDatabase, archive: ArchiveRow, rows: readonly ChainedEntry[]): void {
  const { first, last, previousHash, hash, file, sha256, sealedMs } = archive;
  const columns = rowColumns.join(', ');
  const needed = neededCauses.map((cause) => `'${cause}'`).join(', ');
  database.transaction(() => {
    database
      .prepare(
        'INSERT INTO archive (first, last, previous_hash, hash, file, sha256, sealed_ms) VALUES (?, ?, ?, ?, ?, ?, ?)',
      )
      .run(first, last, previousHash, hash, file, sha256, sealedMs);
    database
      .prepare(
        `INSERT INTO kept (${columns}) SELECT ${columns} FROM journal WHERE sequence <= ? AND cause IN (${needed})`,
      )
      .run(last);
    const keep = database.prepare(`INSERT INTO kept (${columns}) SELECT ${columns} FROM journal WHERE sequence = ?`);
    for (const sequence of rowsThatStood(rows, new Set(stoodWhenSealed(database)().keys()))) keep.run(sequence);
    database.prepare('DELETE FROM journal WHERE sequence <= ?').run(last);
    database.prepare('DELETE FROM span WHERE block < ?').run(Math.floor((last + 1) / 1024));
    failpoint('journal-archive-mid-transaction');
  })();
}

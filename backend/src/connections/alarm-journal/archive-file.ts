import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { chainedEntry, rowColumns, storedValues, type ChainedEntry, type StoredValues } from './journal-entry';
import type { ArchiveRow } from './journal-reading';

/** Name of the folder of sealed files, beside the journal. */
export const archiveFolderName = 'journal-archive';
export const archiveFolderOf = (journal: string): string => join(dirname(journal), archiveFolderName);

/** Layout of a sealed file; another number is another program's. */
const format = 1;
/** Far above what a file of `rowsAFile` rows takes; a damaged one must not fill the memory. */
const longestText = 256 * 1024 * 1024;

const place = (sequence: number): string => String(sequence).padStart(12, '0');
export const archiveName = (first: number, last: number): string => `rows-${place(first)}-${place(last)}.jsonl.gz`;
export const archiveNamePattern = /^rows-(\d{12})-(\d{12})\.jsonl\.gz$/;

export const sha256Of = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

/**
 * Text of a sealed file: JSON Lines (one JSON text a line, UTF-8), the first an object that names the columns, each other the
 * array of one row. Gzip (RFC 1952) is put around it.
 */
export function archiveText(rows: readonly ChainedEntry[]): string {
  const [first, last] = [rows[0]?.sequence ?? 0, rows.at(-1)?.sequence ?? 0];
  const lines = [{ format, first, last, columns: rowColumns }, ...rows.map(storedValues)];
  return lines.map((line) => `${JSON.stringify(line)}\n`).join('');
}

export interface ArchiveUnread {
  readonly code: 'JOURNAL_ARCHIVE_MISSING' | 'JOURNAL_ARCHIVE_DAMAGED';
  readonly message: string;
}

/** The rows of a sealed file, if it is the one that was sealed. The hashes of its rows are for the walk over the chain to check. */
export function readArchive(folder: string, archive: ArchiveRow): Result<readonly ChainedEntry[], ArchiveUnread> {
  const path = join(folder, archive.file);
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (fault) {
    const said = fault instanceof Error ? fault.message : String(fault);
    return unread('MISSING', `${path} can't be read (${said}); put it back from a back-up`);
  }
  if (sha256Of(bytes) !== archive.sha256)
    return unread('DAMAGED', `${path} is not as it was sealed; put it back from a back-up`);
  const rows = parsed(bytes);
  const whole =
    rows !== null &&
    rows[0]?.sequence === archive.first &&
    rows[0].previousHash === archive.previousHash &&
    rows.at(-1)?.sequence === archive.last &&
    rows.at(-1)?.hash === archive.hash;
  if (!whole) return unread('DAMAGED', `${path} does not hold rows ${archive.first} to ${archive.last}`);
  return ok(rows);
}

function parsed(bytes: Buffer): ChainedEntry[] | null {
  try {
    const [header, ...lines] = gunzipSync(bytes, { maxOutputLength: longestText })
      .toString('utf8')
      .trimEnd()
      .split('\n');
    if ((JSON.parse(header ?? '') as { format?: unknown }).format !== format) return null;
    return lines.map((line) => chainedEntry(JSON.parse(line) as StoredValues));
  } catch {
    // Said by who asked, with the name of the file.
    return null;
  }
}

const unread = (what: 'MISSING' | 'DAMAGED', message: string): Result<never, ArchiveUnread> =>
  fail({ code: `JOURNAL_ARCHIVE_${what}`, message });

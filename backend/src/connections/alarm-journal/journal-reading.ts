import type { JournalDatabase } from './journal-database';
import { chainedEntry, rowColumns, type ChainedEntry, type StoredValues } from './journal-entry';
import type { StandingRow } from './standing-alarms';
import { emptyHead, type JournalHead } from './verify-journal';

/** A sealed file of rows, as the journal has it on record. */
export interface ArchiveRow {
  readonly first: number;
  readonly last: number;
  readonly previousHash: string;
  readonly hash: string;
  /** Name in the folder of archives. */
  readonly file: string;
  readonly sha256: string;
  readonly sealedMs: number;
}

/** What is read of a journal file to walk it, of an older schema too. */
export interface JournalReading {
  head(): JournalHead;
  /** In the order in which they last changed. */
  standing(): StandingRow[];
  /** In order of sequence. */
  archives(): ArchiveRow[];
  /** Rows that were sealed and are still needed, in order of sequence. */
  kept(): ChainedEntry[];
  /** All rows that are not sealed, fetched piece by piece. */
  all(): Iterable<ChainedEntry>;
}

const fetchedAtOnce = 1000;

/** @param version schema of the file; before 3 it has neither facts nor archives */
export function journalReading(database: JournalDatabase, version: number): JournalReading {
  const columns = rowColumns.map((column) => (column === 'facts' && version < 3 ? 'NULL' : column)).join(', ');
  const head = database.prepare('SELECT sequence, hash FROM head').raw();
  const standing = database.prepare('SELECT alarm, sequence, record FROM standing ORDER BY sequence').raw();
  const after = database.prepare(`SELECT ${columns} FROM journal WHERE sequence > ? ORDER BY sequence LIMIT ?`).raw();
  return {
    head() {
      const found = head.get() as [number, string] | undefined;
      return found === undefined ? emptyHead : { sequence: found[0], hash: found[1] };
    },
    standing: () =>
      (standing.all() as [string, number, string][]).map(([alarm, sequence, record]) => ({ alarm, sequence, record })),
    archives() {
      if (version < 3) return [];
      const rows = database
        .prepare('SELECT first, last, previous_hash, hash, file, sha256, sealed_ms FROM archive')
        .raw();
      return (rows.all() as [number, number, string, string, string, string, number][]).map(
        ([first, last, previousHash, hash, file, sha256, sealedMs]) => ({
          first,
          last,
          previousHash,
          hash,
          file,
          sha256,
          sealedMs,
        }),
      );
    },
    kept() {
      if (version < 3) return [];
      const rows = database.prepare(`SELECT ${columns} FROM kept ORDER BY sequence`).raw();
      return (rows.all() as StoredValues[]).map(chainedEntry);
    },
    *all() {
      let last = Number.MIN_SAFE_INTEGER;
      for (;;) {
        const rows = (after.all(last, fetchedAtOnce) as StoredValues[]).map(chainedEntry);
        yield* rows;
        last = rows.at(-1)?.sequence ?? last;
        if (rows.length < fetchedAtOnce) return;
      }
    },
  };
}

import { readArchive } from './archive-file';
import type { ChainedEntry } from './journal-entry';
import { journalHash } from './journal-hash';
import type { JournalReading } from './journal-reading';
import { neededAfterSealing } from './needed-rows';
import { verifyJournal } from './verify-journal';

export interface VerifiedChain {
  readonly rows: number;
  readonly sealedRows: number;
  readonly brokenAt: number | null;
  readonly archiveFault: string | null;
}

/**
 * Walks the sealed files and the rows of the journal as one chain: each file as its SHA-256 on record says, its rows from where
 * the one before ended, and the rows that were kept of it as they stand there.
 */
export function verifyChain(reading: JournalReading, folder: string): VerifiedChain {
  const kept = new Map(reading.kept().map((row) => [row.sequence, row]));
  let sealedRows = 0;
  let fault: { readonly at: number; readonly message: string } | null = null;
  let wrongKept: number | null = null;

  function* rows(): Iterable<ChainedEntry> {
    for (const archive of reading.archives()) {
      const read = readArchive(folder, archive);
      if (!read.ok) {
        fault ??= { at: archive.first, message: read.fault.message };
        return;
      }
      for (const row of read.value) {
        sealedRows += 1;
        if (!isKeptAsNeeded(row, kept.get(row.sequence))) wrongKept ??= row.sequence;
        kept.delete(row.sequence);
        yield row;
      }
    }
    yield* reading.all();
  }

  const { rows: count, brokenAt } = verifyJournal(rows(), reading.head(), reading.standing());
  const found = fault as { readonly at: number; readonly message: string } | null;
  if (found !== null) return { rows: count, sealedRows, brokenAt: found.at, archiveFault: found.message };
  const [strange] = kept.keys();
  return { rows: count, sealedRows, brokenAt: brokenAt ?? wrongKept ?? strange ?? null, archiveFault: null };
}

/** A row that a restart needs is kept, as it stands in the sealed file; others are not. */
function isKeptAsNeeded(row: ChainedEntry, kept: ChainedEntry | undefined): boolean {
  if (kept === undefined) return !neededAfterSealing(row.cause);
  return kept.hash === row.hash && kept.hash === journalHash(kept.sequence, kept, kept.previousHash);
}

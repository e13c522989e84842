import type { ChainedEntry } from './journal-entry';
import { firstPreviousHash, journalHash } from './journal-hash';
import { standingChange, standingDifference, type StandingRow } from './standing-alarms';

export interface JournalHead {
  readonly sequence: number;
  readonly hash: string;
}

/** Sequence and hash before the first row. */
export const emptyHead: JournalHead = { sequence: 0, hash: firstPreviousHash };

/**
 * Walks the rows in order of sequence: no gap, every hash as computed, every row naming the one before,
 * the last one the head, and the standing alarms what the rows add up to.
 * Whoever can write the file can also write a whole new chain; the proof is against a copy of a hash kept elsewhere.
 */
export function verifyJournal(
  rows: Iterable<ChainedEntry>,
  head: JournalHead,
  standing: readonly StandingRow[],
): { rows: number; brokenAt: number | null } {
  let last = emptyHead;
  let count = 0;
  let brokenAt: number | null = null;
  const replayed = new Map<string, StandingRow>();
  for (const row of rows) {
    count++;
    const sequence = last.sequence + 1;
    const whole =
      row.sequence === sequence && row.previousHash === last.hash && row.hash === journalHash(sequence, row, last.hash);
    if (!whole) brokenAt ??= sequence;
    const change = standingChange(row.sequence, row);
    if (change.kind === 'put') replayed.set(change.row.alarm, change.row);
    if (change.kind === 'remove') replayed.delete(change.alarm);
    last = { sequence: row.sequence, hash: row.hash };
  }
  if (head.sequence !== last.sequence || head.hash !== last.hash)
    brokenAt ??= Math.min(head.sequence, last.sequence) + 1;
  brokenAt ??= standingDifference(standing, replayed);
  return { rows: count, brokenAt };
}

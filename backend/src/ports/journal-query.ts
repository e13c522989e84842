import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { JournalFilter } from '@ebbline/shared/contract/journal-search';

/** Which rows of the journal, and in which order. What is absent or null does not narrow. */
export interface JournalQuery extends Omit<Partial<JournalFilter>, 'from' | 'to'> {
  /** Rows that happened in [fromMs, toMs). */
  readonly fromMs: number | null;
  readonly toMs: number | null;
  /** Oldest first: rows behind this sequence. Newest first: none at or before it. */
  readonly after: number | null;
  /** Rows before this sequence. */
  readonly before?: number | null;
  /** Default: oldest first. */
  readonly order?: 'oldest' | 'newest';
  /** Rows at most; 500 where left out, and never more. */
  readonly limit?: number;
  /** False leaves out rows of people and access. */
  readonly audit?: boolean;
}

export interface JournalPage {
  readonly rows: readonly JournalRow[];
  /** Where the next page goes on: `after`, newest first `before`. Null at the end. */
  readonly next: number | null;
}

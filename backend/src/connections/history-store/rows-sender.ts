import type { HistoryRows } from '../../evaluation/pipeline/history-rows';

/** Hands rows to a receiver that may die, and keeps them until they are confirmed. */
export interface RowsSender {
  /** Rows that are not confirmed yet. */
  readonly rowsQueued: number;
  /** No row that is not confirmed yet is older, ms; Infinity where all are. */
  readonly oldestMs: number;
  /** Faults of the latest sending and what was lost, for health. */
  readonly troubles: readonly string[];
  /** False while the latest rows could not be committed. */
  readonly well: boolean;
  /** Resolves once the rows are committed, rejects where they are given up. */
  write(rows: HistoryRows): Promise<void>;
  /** Resolves when nothing waits any more, or the receiver takes nothing. */
  flush(): Promise<void>;
  close(): Promise<void>;
}

/** The oldest row of some, ms since 1970; Infinity where there is none. */
export const oldestOf = ({ count, secondMs }: HistoryRows): number =>
  secondMs.subarray(0, count).reduce((oldest, one) => Math.min(oldest, one), Infinity);

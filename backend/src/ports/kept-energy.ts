/** Sums over one local day that is over, or over its local hours: rows of numbers that only the one who adds up knows. */
export interface KeptSums {
  readonly startMs: number;
  readonly endMs: number;
  readonly sums: Float64Array;
}

/** A day to be kept: its hours in order, one row each, and all of it in one row. */
export interface DayToKeep {
  readonly startMs: number;
  readonly endMs: number;
  readonly day: Float64Array;
  readonly hours: Float64Array;
}

/**
 * Keeps what was added up from history, so that a year need not be read again. Nothing in it is an original: whatever is lost, damaged
 * or forgotten is added up again, so no call throws over a file that can't be read; it keeps less, and never tells a wrong sum.
 */
export interface KeptEnergy {
  /** Days that begin in [fromMs, toMs), as they were kept with that very recipe, in order of time. */
  read(of: 'day' | 'hours', holder: string, recipe: string, fromMs: number, toMs: number): readonly KeptSums[];
  /** All of it or nothing is kept; it survives a kill of the program when the call returns. */
  keep(holder: string, recipe: string, days: readonly DayToKeep[]): void;
  /** Latest end of any day that is kept, ms; −Infinity where none is. */
  untilMs(): number;
  /** Forgets every day that holds an instant of [fromMs, toMs]; survives a loss of power when the call returns. */
  forget(holder: string, fromMs: number, toMs: number): void;
  close(): void;
}

/**
 * A batch of history rows as columns, ready to be moved to another thread. Row r belongs to
 * `holder[r]` and the second `secondMs[r]`; its values stand at values[offset[r] … offset[r] + n − 1]
 * in the slot order of that holder. NaN = nothing measured in that second (never held over), or bad.
 * A row may come again for the same (holder, second): it merges, value by value, the last write wins.
 */
export interface HistoryRows {
  readonly count: number;
  readonly holder: Int32Array;
  readonly secondMs: Float64Array;
  readonly offset: Int32Array;
  readonly values: Float64Array;
  /** Beside each value: 0 nothing, 1 good, 2 uncertain, 3 bad. */
  readonly quality: Uint8Array;
}

import type { HistoryMinute } from '../../ports/history-store';

/** A minute of which nothing is known. */
export const emptyMinute = (columns: number): HistoryMinute => {
  const none = (): Float64Array => new Float64Array(columns).fill(NaN);
  return { min: none(), mean: none(), max: none(), count: new Float64Array(columns) };
};

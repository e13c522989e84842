import type { HistoryRows } from '../../../evaluation/pipeline/history-rows';

export const newestOf = (rows: HistoryRows): number => {
  let newestMs = -Infinity;
  for (let row = 0; row < rows.count; row++) newestMs = Math.max(newestMs, rows.secondMs[row] ?? -Infinity);
  return newestMs;
};

export const oldestOf = (rows: HistoryRows): number => {
  let oldestMs = Infinity;
  for (let row = 0; row < rows.count; row++) oldestMs = Math.min(oldestMs, rows.secondMs[row] ?? Infinity);
  return oldestMs;
};

/** Rows of the second `lastMs` and before, and those after; null where there are none. The values are shared, not copied. */
export function splitRows(rows: HistoryRows, lastMs: number): { until: HistoryRows | null; after: HistoryRows | null } {
  const until: number[] = [];
  const after: number[] = [];
  for (let row = 0; row < rows.count; row++) ((rows.secondMs[row] ?? NaN) > lastMs ? after : until).push(row);
  return { until: chosen(rows, until), after: chosen(rows, after) };
}

function chosen(rows: HistoryRows, places: readonly number[]): HistoryRows | null {
  if (places.length === 0) return null;
  if (places.length === rows.count) return rows;
  return {
    ...rows,
    count: places.length,
    holder: Int32Array.from(places, (row) => rows.holder[row] ?? -1),
    secondMs: Float64Array.from(places, (row) => rows.secondMs[row] ?? NaN),
    offset: Int32Array.from(places, (row) => rows.offset[row] ?? 0),
  };
}

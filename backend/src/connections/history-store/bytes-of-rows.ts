import type { HistoryRows } from '../../evaluation/pipeline/history-rows';

/** What rows take in memory, bytes. */
export const bytesOfRows = (rows: HistoryRows): number =>
  rows.holder.byteLength +
  rows.secondMs.byteLength +
  rows.offset.byteLength +
  rows.values.byteLength +
  rows.quality.byteLength;

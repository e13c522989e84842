import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import type { HistoryBuckets } from '../../ports/history-store';

/** The store's columns as JSON carries them: null where nothing was measured. */
export function toHistoryColumns(
  unit: string,
  point: string,
  unitOfMeasure: string,
  buckets: HistoryBuckets,
): HistoryColumns {
  return {
    unit,
    point,
    unit_of_measure: unitOfMeasure,
    bucketMs: buckets.bucketMs,
    resolution: buckets.resolution,
    start: Array.from(buckets.startMs, (ms) => new Date(ms).toISOString()),
    min: numbers(buckets.min),
    mean: numbers(buckets.mean),
    max: numbers(buckets.max),
    count: Array.from(buckets.count),
  };
}

const numbers = (column: Float64Array): (number | null)[] =>
  Array.from(column, (value) => (Number.isFinite(value) ? value : null));

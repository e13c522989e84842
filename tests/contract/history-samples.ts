import type { HistoryRows } from '../../backend/src/evaluation/pipeline/history-rows';
import type { HistoryBuckets, HistoryLayout } from '../../backend/src/ports/history-store';

/** 2025-06-01T00:00:00Z, the start of an hour and of a day. */
export const startMs = Date.UTC(2025, 5, 1);
export const second = 1000;
export const minute = 60 * second;
export const hour = 60 * minute;
export const day = 24 * hour;

/** Two holders whose columns differ in number and share a name. */
export const layout: HistoryLayout = {
  holders: [
    {
      id: 'unit-1',
      columns: [
        { point: 'supply.pressure', unitOfMeasure: 'Pa' },
        { point: 'loop.flow', unitOfMeasure: 'm3/s' },
        { point: 'branch.r 1,=.flow', unitOfMeasure: 'm3/s' },
      ],
    },
    { id: "hall 'A', west=1", columns: [{ point: 'supply.pressure', unitOfMeasure: 'Pa' }] },
  ],
};
export const pressure = { holder: 'unit-1', point: 'supply.pressure', unitOfMeasure: 'Pa' };
export const flow = { holder: 'unit-1', point: 'loop.flow', unitOfMeasure: 'm3/s' };
export const oddName = { holder: 'unit-1', point: 'branch.r 1,=.flow', unitOfMeasure: 'm3/s' };
export const otherHolder = { holder: "hall 'A', west=1", point: 'supply.pressure', unitOfMeasure: 'Pa' };

export interface SampleRow {
  readonly holder: number;
  readonly atMs: number;
  /** null = nothing. */
  readonly values: readonly (number | null)[];
  readonly quality?: readonly number[];
}

export function rowsOf(samples: readonly SampleRow[]): HistoryRows {
  const offsets: number[] = [];
  const values: number[] = [];
  const quality: number[] = [];
  for (const sample of samples) {
    offsets.push(values.length);
    values.push(...sample.values.map((value) => value ?? NaN));
    quality.push(...(sample.quality ?? sample.values.map((value) => (value === null ? 0 : 1))));
  }
  return {
    count: samples.length,
    holder: Int32Array.from(samples, (sample) => sample.holder),
    secondMs: Float64Array.from(samples, (sample) => sample.atMs),
    offset: Int32Array.from(offsets),
    values: Float64Array.from(values),
    quality: Uint8Array.from(quality),
  };
}

/** One row a second of the first holder: its pressure by a function of the second, nothing else. */
export const pressures = (fromMs: number, count: number, valueAt: (index: number) => number | null): HistoryRows =>
  rowsOf(
    Array.from({ length: count }, (_, index) => ({
      holder: 0,
      atMs: fromMs + index * second,
      values: [valueAt(index), null, null],
    })),
  );

/** Buckets as plain numbers, null where nothing was measured. */
export function plain(buckets: HistoryBuckets): Record<'start' | 'min' | 'mean' | 'max' | 'count', (number | null)[]> {
  const orNull = (column: Float64Array): (number | null)[] =>
    [...column].map((value) => (Number.isNaN(value) ? null : value));
  return {
    start: [...buckets.startMs],
    min: orNull(buckets.min),
    mean: orNull(buckets.mean),
    max: orNull(buckets.max),
    count: [...buckets.count],
  };
}

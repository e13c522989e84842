import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { lonelyPlaces, toColumns } from '../../../../frontend/src/charts/to-columns';

const history: HistoryColumns = {
  unit: 'e1',
  point: 'supply.pressure',
  unit_of_measure: 'Pa',
  bucketMs: 10_000,
  resolution: 'second',
  start: ['2026-03-01T12:00:00.000Z', '2026-03-01T12:00:10.000Z', '2026-03-01T12:00:20.000Z'],
  min: [1000, null, 3000],
  mean: [1500, null, 3500],
  max: [2000, null, 4000],
  count: [10, 0, 10],
};
/** A unit of measure that is shown as it is kept. */
const plain = { factor: 1 };
const noon = Date.parse('2026-03-01T12:00:00.000Z') / 1000;

describe('columns for a chart', () => {
  it('stand in the middle of their buckets, in the unit shown', () => {
    const columns = toColumns(history, { factor: 1e-3 });
    expect(columns.seconds).toEqual([noon + 5, noon + 15, noon + 25]);
    expect(columns.max).toEqual([2, null, 4]);
  });

  it('keep a gap a gap', () => {
    expect(toColumns(history, plain).mean[1]).toBeNull();
    expect(toColumns({ ...history, mean: [1500, 0, 3500] }, plain).mean[1]).toBeNull();
  });

  it('follow the newest live value', () => {
    const columns = toColumns(history, plain, { time: '2026-03-01T12:00:31.000Z', value: 5000 });
    expect(columns.seconds.at(-1)).toBe(noon + 31);
    expect(columns.mean.at(-1)).toBe(5000);
  });

  it('draw no line to a live value over a time in which nothing was measured', () => {
    const columns = toColumns(history, plain, { time: '2026-03-01T12:10:00.000Z', value: 5000 });
    expect(columns.mean.slice(-2)).toEqual([null, 5000]);
  });

  it('leave out a live value that is missing or not newer', () => {
    expect(toColumns(history, plain, { time: '2026-03-01T12:00:31.000Z', value: null }).seconds).toHaveLength(3);
    expect(toColumns(history, plain, { time: '2026-03-01T12:00:21.000Z', value: 1 }).seconds).toHaveLength(3);
  });

  it('find the values that stand alone between gaps', () => {
    expect(lonelyPlaces([1, null, 3, 4, null, 6])).toEqual([0, 5]);
  });
});

import { historyColumnsSchema } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { toHistoryColumns } from '../../../../../backend/src/connections/http-api/to-history-columns';

describe('columns of history', () => {
  it('carry null where nothing was measured, and times in UTC', () => {
    const columns = toHistoryColumns('m1', 'loop.flow', 'm3/s', {
      bucketMs: 1000,
      resolution: 'second',
      startMs: Float64Array.of(0, 1000),
      min: Float64Array.of(1, Number.NaN),
      mean: Float64Array.of(2, Number.NaN),
      max: Float64Array.of(3, Number.NaN),
      count: Float64Array.of(4, 0),
    });
    expect(historyColumnsSchema.parse(columns)).toEqual(columns);
    expect(columns).toMatchObject({
      start: ['1970-01-01T00:00:00.000Z', '1970-01-01T00:00:01.000Z'],
      min: [1, null],
      mean: [2, null],
      max: [3, null],
      count: [4, 0],
    });
  });
});

import { describe, expect, it } from 'vitest';
import { bucketSeconds } from '../../../../../backend/src/runner/report/bucket-seconds';

describe('seconds in buckets', () => {
  it('have least, mean, most and count of each, nothing where nothing was, and only what is in the period', () => {
    const values = [Float64Array.of(99, 2, 1, 6, NaN, -2, 77)];
    // Worked by hand: seconds 1 to 5 of a period from 0.5 s to 6 s in two buckets of 2.75 s.
    const found = bucketSeconds({ fromMs: 0, count: 7, values }, 0, { fromMs: 500, toMs: 6000, buckets: 2 });
    expect(found).toEqual({
      bucketMs: 2750,
      resolution: 'second',
      startMs: Float64Array.of(500, 3250),
      min: Float64Array.of(1, -2),
      mean: Float64Array.of(3, -2),
      max: Float64Array.of(6, -2),
      count: Float64Array.of(3, 1),
    });
    const none = bucketSeconds({ fromMs: 0, count: 7, values }, 0, { fromMs: 3500, toMs: 5000, buckets: 2 });
    expect([none.count, none.mean, none.min]).toEqual(
      [
        [0, 0],
        [NaN, NaN],
        [NaN, NaN],
      ].map((all) => Float64Array.from(all)),
    );
  });
});

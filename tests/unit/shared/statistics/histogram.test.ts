import { describe, expect, it } from 'vitest';
import { Histogram } from '@ebbline/shared/statistics/histogram';

describe('a histogram', () => {
  it('counts what is at most each bound, and all of it', () => {
    const histogram = new Histogram([1, 2, 5]);
    for (const value of [0.5, 1, 1.5, 2, 5, 5.1, 100]) histogram.observe(value);
    expect(histogram.cumulative()).toEqual([2, 4, 5, 7]);
    expect(histogram.count).toBe(7);
    expect(histogram.sum).toBeCloseTo(115.1, 12);
  });

  it('counts a figure as often as it is told', () => {
    const histogram = new Histogram([1]);
    histogram.observe(0.25, 4);
    expect([histogram.count, histogram.sum, ...histogram.cumulative()]).toEqual([4, 1, 4, 4]);
  });
});

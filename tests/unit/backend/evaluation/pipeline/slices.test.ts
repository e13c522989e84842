import { describe, expect, it } from 'vitest';
import {
  dueSlices,
  longestCatchUpMs,
  sliceMs,
  slicesPerSecond,
  unitsBySlice,
} from '../../../../../backend/src/evaluation/pipeline/slices';

describe('slices of a second', () => {
  it('are twenty of 50 ms, and hold every unit exactly once, none a unit more than another has', () => {
    expect([slicesPerSecond, sliceMs]).toEqual([20, 50]);
    for (const count of [0, 1, 12, 20, 21, 5003]) {
      const slices = unitsBySlice(count);
      expect(slices.flatMap((slice) => [...slice]).sort((a, b) => a - b)).toEqual(
        Array.from({ length: count }, (_, i) => i),
      );
      const sizes = slices.map((slice) => slice.length);
      expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
    }
  });

  it('are due one after the other, none twice', () => {
    expect(dueSlices(99, 4999)).toEqual({ from: 100, to: 99, skipped: 0 });
    expect(dueSlices(99, 5000)).toEqual({ from: 100, to: 100, skipped: 0 });
    expect(dueSlices(99, 5149)).toEqual({ from: 100, to: 102, skipped: 0 });
    expect(dueSlices(Number.NaN, 5149)).toEqual({ from: 102, to: 102, skipped: 0 });
  });

  it('before a gap that is too long are left out and counted', () => {
    const slices = longestCatchUpMs / sliceMs;
    expect(dueSlices(0, slices * sliceMs)).toEqual({ from: 1, to: slices, skipped: 0 });
    expect(dueSlices(0, (slices + 1) * sliceMs)).toEqual({ from: 2, to: slices + 1, skipped: 1 });
  });
});

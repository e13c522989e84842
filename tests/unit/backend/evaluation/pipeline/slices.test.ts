import { describe, expect, it } from 'vitest';
import {
  dealtSlices,
  dueSlices,
  keptSlices,
  longestCatchUpMs,
  sliceMs,
  slicesPerSecond,
  unitsBySlice,
} from '../../../../../backend/src/evaluation/pipeline/slices';

describe('slices of a second', () => {
  it('are twenty of 50 ms, and hold every unit exactly once, none a unit more than another has', () => {
    expect([slicesPerSecond, sliceMs]).toEqual([20, 50]);
    for (const count of [0, 1, 12, 20, 21, 5003]) {
      const slices = unitsBySlice(dealtSlices(count));
      expect(slices.flatMap((slice) => [...slice]).sort((a, b) => a - b)).toEqual(
        Array.from({ length: count }, (_, i) => i),
      );
      const sizes = slices.map((slice) => slice.length);
      expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
    }
  });

  it('stay the same for a unit that a new site keeps; new units fill up the emptiest', () => {
    const before = dealtSlices(23);
    // The first three units are gone, the others stay in another order, five are new.
    const unitsBefore = Int32Array.from([...Array.from({ length: 20 }, (_, i) => 22 - i), -1, -1, -1, -1, -1]);
    const kept = keptSlices(before, unitsBefore);
    unitsBefore.forEach((was, unit) => {
      if (was >= 0) expect(kept[unit]).toBe(before[was]);
    });
    const sizes = unitsBySlice(kept).map((slice) => slice.length);
    expect([Math.min(...sizes), Math.max(...sizes)]).toEqual([1, 2]);
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

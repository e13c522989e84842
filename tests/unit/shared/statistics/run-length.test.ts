import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cusumLimit, cusumRunLength, ewmaRunLength, shewhartRunLength } from '@ebbline/shared/statistics/run-length';

describe('the mean run length', () => {
  it('is met by the limit that is chosen for it, also where false signals are years apart', () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 6, noNaN: true }), (power) => {
        const samples = 10 ** power;
        expect(cusumRunLength(0.5, cusumLimit(0.5, samples), 0) / samples).toBeCloseTo(1, 4);
      }),
      { numRuns: 8 },
    );
  });

  it('falls as the shift grows, and is the same for a rise and a fall', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2.5, noNaN: true }),
        fc.double({ min: 3, max: 8, noNaN: true }),
        (shift, h) => {
          expect(cusumRunLength(0.5, h, shift + 0.25)).toBeLessThan(cusumRunLength(0.5, h, shift));
          expect(cusumRunLength(0.5, h, -shift) / cusumRunLength(0.5, h, shift)).toBeCloseTo(1, 9);
        },
      ),
      { numRuns: 20 },
    );
  });

  it('of an EWMA of λ = 1 is that of a chart of single samples', () => {
    expect(ewmaRunLength(1, 3, 0) / shewhartRunLength(3)).toBeCloseTo(1, 9);
  });
});

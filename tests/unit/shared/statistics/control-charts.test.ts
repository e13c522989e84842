import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cusumAbove, cusumBelow } from '@ebbline/shared/statistics/cusum';
import { ewma, ewmaHalfWidth } from '@ebbline/shared/statistics/ewma';

const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });

describe('the charts of change', () => {
  it('keep both sums at or above zero, and one mirrors the other', () => {
    fc.assert(
      fc.property(fc.array(number, { minLength: 1, maxLength: 40 }), (samples) => {
        let [above, below, mirrored] = [0, 0, 0];
        for (const x of samples) {
          above = cusumAbove(above, x, 0, 1);
          below = cusumBelow(below, x, 0, 1);
          mirrored = cusumAbove(mirrored, -x, 0, 1);
          expect(above).toBeGreaterThanOrEqual(0);
          expect(below).toBe(mirrored);
        }
      }),
    );
  });

  it('stay at zero while nothing leaves the mean by more than half of the shift that is sought', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1, max: 1, noNaN: true })), (samples) => {
        expect(samples.reduce((sum, x) => cusumAbove(sum, x, 0, 1), 0)).toBe(0);
      }),
    );
  });

  it('take no sample that is no number for a quiet one', () => {
    expect(cusumAbove(3, Number.NaN, 0, 1)).toBeNaN();
    expect(cusumBelow(3, Number.NaN, 0, 1)).toBeNaN();
  });

  it('keep a mean between what it was and what came, within limits that widen to their steady width', () => {
    fc.assert(
      fc.property(number, number, fc.double({ min: 0.01, max: 1, noNaN: true }), (before, x, lambda) => {
        const z = ewma(before, x, lambda);
        expect(z).toBeGreaterThanOrEqual(Math.min(before, x) - 1e-6);
        expect(z).toBeLessThanOrEqual(Math.max(before, x) + 1e-6);
        expect(ewmaHalfWidth(1, lambda, 3, 1)).toBeLessThanOrEqual(ewmaHalfWidth(1, lambda, 3) + 1e-12);
      }),
    );
  });
});

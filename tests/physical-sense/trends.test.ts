import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hotellingLimit, hotellingT2 } from '@ebbline/shared/statistics/hotelling';
import { speLimit } from '@ebbline/shared/statistics/principal-components';
import { cusumLimit } from '@ebbline/shared/statistics/run-length';
import { theilSen } from '@ebbline/shared/statistics/theil-sen';
import { timeToLimit } from '@ebbline/shared/statistics/time-to-limit';
import { welchTest } from '@ebbline/shared/statistics/welch';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('what is told of slow change', () => {
  it('meets its limit just when the straight line does', () => {
    fc.assert(
      fc.property(between(-100, 100), between(0.01, 50), between(0.001, 10), (now, left, slope) => {
        const limit = now + left;
        expect(now + slope * timeToLimit(now, limit, slope, 'above')).toBeCloseTo(limit, 6);
        expect(timeToLimit(now, limit, -slope, 'above')).toBe(Infinity);
        expect(timeToLimit(now, limit, slope * 2, 'above')).toBeLessThan(timeToLimit(now, limit, slope, 'above'));
      }),
    );
  });

  it('does not turn with the unit of measure: a slope scales with it, its interval too', () => {
    const value = between(-10, 10);
    fc.assert(
      fc.property(
        fc.array(value, { minLength: 8, maxLength: 20 }),
        between(0.1, 100),
        between(-50, 50),
        (y, k, add) => {
          const x = y.map((_, i) => i);
          const plain = theilSen(x, y, y.length);
          const scaled = theilSen(
            x,
            y.map((one) => k * one + add),
            y.length,
          );
          expect(scaled.slope).toBeCloseTo(k * plain.slope, 6);
          expect(scaled.lower).toBeCloseTo(k * plain.lower, 6);
          expect(plain.lower).toBeLessThanOrEqual(plain.slope);
          expect(plain.upper).toBeGreaterThanOrEqual(plain.slope);
        },
      ),
    );
  });

  it('asks for the more the rarer it may be wrong', () => {
    fc.assert(
      fc.property(between(2, 5), between(0.001, 0.05), (power, alpha) => {
        expect(cusumLimit(0.5, 10 ** (power + 0.5))).toBeGreaterThan(cusumLimit(0.5, 10 ** power));
        expect(hotellingLimit(3, 100, alpha / 2)).toBeGreaterThan(hotellingLimit(3, 100, alpha));
        expect(speLimit([2, 1, 0.5, 0.2], 1, alpha / 2)).toBeGreaterThan(speLimit([2, 1, 0.5, 0.2], 1, alpha));
      }),
      { numRuns: 20 },
    );
  });

  it('trusts a pattern the more the longer it was learnt', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 500 }), (count) => {
        expect(hotellingLimit(3, count + 50, 0.01)).toBeLessThan(hotellingLimit(3, count, 0.01));
      }),
    );
  });

  it('sees the same distance whatever the units of the signals', () => {
    fc.assert(
      fc.property(between(-5, 5), between(-5, 5), between(-0.9, 0.9), between(0.1, 100), (x, y, r, k) => {
        const plain = hotellingT2([x, y], [0, 0], [1, r, r, 1]);
        const scaled = hotellingT2([k * x, y], [0, 0], [k * k, k * r, k * r, 1]);
        expect(Math.abs(scaled - plain)).toBeLessThan(1e-8 * Math.max(1, plain));
        expect(plain).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('parts two means the more surely the further they lie apart and the longer they were watched', () => {
    const one = { mean: 0, standardDeviation: 1, count: 20 };
    fc.assert(
      fc.property(between(0.01, 5), fc.integer({ min: 3, max: 200 }), (apart, count) => {
        const t = (mean: number, samples: number): number =>
          welchTest(one, { mean, standardDeviation: 2, count: samples }).t;
        expect(t(2 * apart, count)).toBeCloseTo(2 * t(apart, count), 9);
        expect(t(apart, count + 1)).toBeGreaterThan(t(apart, count));
      }),
    );
  });
});

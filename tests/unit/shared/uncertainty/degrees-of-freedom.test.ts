import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  coverageFactorOf,
  degreesOfScatter,
  effectiveDegreesOfFreedom,
  scatterOf,
} from '@ebbline/shared/uncertainty/degrees-of-freedom';

describe('the coverage factor for 95.45 %', () => {
  // JCGM 100:2008 (GUM) table G.2, column 95.45 %; from memory, to the two decimals of the table.
  it.for([
    [1, 13.97],
    [2, 4.53],
    [3, 3.31],
    [4, 2.87],
    [5, 2.65],
    [6, 2.52],
    [7, 2.43],
    [8, 2.37],
    [9, 2.32],
    [10, 2.28],
    [20, 2.13],
    [50, 2.05],
  ] as const)('of %i degrees of freedom is %f', ([degrees, factor]) => {
    expect(Math.abs(coverageFactorOf(degrees) - factor)).toBeLessThanOrEqual(0.0051);
  });

  it('is 2 where no part rests on a count of observations, and never below', () => {
    expect(coverageFactorOf(Infinity)).toBe(2);
    expect(coverageFactorOf(Number.NaN)).toBe(2);
    for (let degrees = 1; degrees < 400; degrees += 1) {
      expect(coverageFactorOf(degrees)).toBeGreaterThanOrEqual(2);
      expect(coverageFactorOf(degrees)).toBeGreaterThanOrEqual(coverageFactorOf(degrees + 1));
    }
  });

  it('cuts parts of a degree off (GUM G.4.1)', () => {
    expect(coverageFactorOf(9.9)).toBe(coverageFactorOf(9));
  });
});

describe('effective degrees of freedom', () => {
  // GUM H.1.6 and H.1.7, table H.1: the end gauge, nm.
  it('of the end gauge are 16', () => {
    const parts = [
      { contribution: 25, degreesOfFreedom: 18 },
      { contribution: 9.7, degreesOfFreedom: 25.6 },
      { contribution: 2.9, degreesOfFreedom: 50 },
      { contribution: 16.6, degreesOfFreedom: 2 },
    ];
    expect(effectiveDegreesOfFreedom(Math.hypot(...parts.map(({ contribution }) => contribution)), parts)).toBe(16);
  });

  it('of one part alone are its own', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 150 }), fc.double({ min: 1e-12, max: 1e6, noNaN: true }), (degrees, u) => {
        expect(degreesOfScatter(u, scatterOf(u, degrees))).toBe(degrees);
      }),
    );
  });

  it('are without end where nothing was counted', () => {
    expect(degreesOfScatter(3, scatterOf(3, Infinity))).toBe(Infinity);
  });

  it('never fall below the least of the parts', () => {
    const part = fc.record({
      contribution: fc.double({ min: 0.01, max: 100, noNaN: true }),
      degreesOfFreedom: fc.integer({ min: 1, max: 100 }),
    });
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 6 }), (parts) => {
        const combined = Math.hypot(...parts.map(({ contribution }) => contribution));
        const least = Math.min(...parts.map(({ degreesOfFreedom }) => degreesOfFreedom));
        expect(effectiveDegreesOfFreedom(combined, parts)).toBeGreaterThanOrEqual(least);
      }),
    );
  });
});

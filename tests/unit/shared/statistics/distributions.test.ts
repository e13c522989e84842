import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chiSquareProbability,
  chiSquareQuantile,
  fisherProbability,
  fisherQuantile,
  normalProbability,
  normalQuantile,
  studentProbability,
  studentQuantile,
} from '@ebbline/shared/statistics/distributions';

const share = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
const degrees = fc.double({ min: 1, max: 200, noNaN: true });

describe('the distributions', () => {
  /** NIST/SEMATECH e-Handbook 1.3.6.7: printed tables, three decimals. */
  it.each([
    ['normal 0.975', normalQuantile(0.975), 1.96, 0.0005],
    ['t of 10 at 0.975', studentQuantile(0.975, 10), 2.228, 0.0006],
    ['t of 1 at 0.95', studentQuantile(0.95, 1), 6.314, 0.0006],
    ['χ² of 1 at 0.95', chiSquareQuantile(0.95, 1), 3.841, 0.0006],
    ['χ² of 10 at 0.99', chiSquareQuantile(0.99, 10), 23.209, 0.0006],
    ['F of 5 and 10 at 0.95', fisherQuantile(0.95, 5, 10), 3.326, 0.0006],
    ['F of 1 and 1 at 0.95', fisherQuantile(0.95, 1, 1), 161.448, 0.0006],
  ])('give %s as printed', (_, value, printed, tolerance) => {
    expect(Math.abs(value - printed)).toBeLessThanOrEqual(tolerance);
  });

  /** Abramowitz & Stegun, table 26.2 (−log Q): Q(5) = 2.866 52e-7, Q(10) = 7.619 85e-24. */
  it.each([
    [-5, 2.86652e-7],
    [-10, 7.61985e-24],
  ])('keep the digits of the far tail at %d', (z, printed) => {
    expect(Math.abs(normalProbability(z) / printed - 1)).toBeLessThan(2e-6);
  });

  it('come back from share to value to share', () => {
    fc.assert(
      fc.property(share, degrees, degrees, (p, one, other) => {
        expect(Math.abs(normalProbability(normalQuantile(p)) - p)).toBeLessThan(1e-12);
        expect(Math.abs(studentProbability(studentQuantile(p, one), one) - p)).toBeLessThan(1e-10);
        expect(Math.abs(chiSquareProbability(chiSquareQuantile(p, one), one) - p)).toBeLessThan(1e-10);
        expect(Math.abs(fisherProbability(fisherQuantile(p, one, other), one, other) - p)).toBeLessThan(1e-10);
      }),
      { numRuns: 60 },
    );
  });

  it('agree where one is the square of another: t² is F of 1 and ν, z² is χ² of 1', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 6, noNaN: true }), degrees, (t, nu) => {
        const between = studentProbability(t, nu) - studentProbability(-t, nu);
        expect(Math.abs(fisherProbability(t * t, 1, nu) - between)).toBeLessThan(1e-10);
        const normal = normalProbability(t) - normalProbability(-t);
        expect(Math.abs(chiSquareProbability(t * t, 1) - normal)).toBeLessThan(1e-12);
      }),
    );
  });
});

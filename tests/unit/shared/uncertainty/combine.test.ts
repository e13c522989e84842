import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  combine2,
  combine3,
  differenceUncertainty,
  expanded,
  rectangular,
  relativeToAbsolute,
} from '@ebbline/shared/uncertainty/combine';

const u = fc.double({ min: 1e-6, max: 1e3, noNaN: true });

describe('combining uncertainties', () => {
  it('adds independent contributions as squares (GUM eq. 10)', () => {
    expect(combine2(3, 4)).toBe(5);
    expect(combine3(2, 3, 6)).toBe(7);
  });

  it('expands with k = 2 (GUM 6.2.1, 6.3.3)', () => {
    expect(expanded(0.4)).toBe(0.8);
    expect(relativeToAbsolute(-50, 0.02)).toBe(1);
  });

  it('lets a common error of both sensors fall out of their difference', () => {
    expect(differenceUncertainty(0.1, 0.1, 1)).toBeCloseTo(0, 12);
    expect(differenceUncertainty(0.1, 0.1)).toBeCloseTo(Math.SQRT2 * 0.1, 12);
    expect(differenceUncertainty(0.1, 0.1, -1)).toBeCloseTo(0.2, 12);
  });

  it('never makes a sum more certain than its parts', () => {
    fc.assert(
      fc.property(u, u, (a, b) => combine2(a, b) >= Math.max(a, b) * (1 - 1e-12) && combine2(a, b) <= a + b + 1e-9),
    );
  });

  it('says nothing where a part says nothing', () => {
    expect(combine2(Number.NaN, 1)).toBeNaN();
    expect(rectangular(Number.NaN)).toBeNaN();
  });
});

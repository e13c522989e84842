import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makePattern, type Pattern } from '../../../../../../backend/src/evaluation/derive/memory/pattern';
import { addToMoments } from '@ebbline/shared/statistics/co-moments';

/** Flow and pressure difference that rise together, and a temperature of its own that hardly moves. */
function learnt(): Pattern {
  const mean = new Float64Array(3);
  const products = new Float64Array(9);
  const count = 160;
  for (let i = 0; i < count; i += 1) {
    const load = Math.sin(i);
    const sample = Float64Array.of(5 + load + 0.05 * Math.cos(7 * i), 40 + 8 * load, 36 + 0.1 * Math.cos(3 * i));
    addToMoments(sample, i + 1, mean, products);
  }
  return makePattern(mean, products, count);
}

describe('the usual pattern of a unit', () => {
  const pattern = learnt();

  it('finds a usual load usual, high or low', () => {
    for (const load of [-1, -0.5, 0, 0.5, 1]) {
      const { along, off } = pattern.judge([5 + load, 40 + 8 * load, 36]);
      expect(along).toBeLessThan(1);
      expect(off).toBeLessThan(1);
    }
  });

  it('finds a load far beyond what was learnt along the pattern, not off it', () => {
    const { along, off } = pattern.judge([5 + 6, 40 + 48, 36]);
    expect(along).toBeGreaterThan(1);
    expect(off).toBeLessThan(1);
  });

  it('finds less flow at the same pressure off the pattern, although each alone is usual', () => {
    const { along, off } = pattern.judge([5 - 0.7, 40 + 5.6, 36]);
    expect(off).toBeGreaterThan(1);
    expect(along).toBeLessThan(1);
  });

  it('says nothing of a sample with a gap', () => {
    const { along, off } = pattern.judge([Number.NaN, 40, 36]);
    expect(along).toBeNaN();
    expect(off).toBeNaN();
  });

  it('leaves out a signal that stood still', () => {
    const products = Float64Array.of(10, 0, 0, 0, 0, 0, 0, 0, 10);
    const still = makePattern([0, 0, 0], products, 11);
    expect(still.judge([1, 100, 1]).along).toBeCloseTo(still.judge([1, 0, 1]).along, 12);
  });

  it('is the further away the further a sample goes', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 5, noNaN: true }), (far) => {
        const near = pattern.judge([5 + far, 40 - 8 * far, 36]);
        const further = pattern.judge([5 + 2 * far, 40 - 16 * far, 36]);
        expect(further.off).toBeGreaterThan(near.off);
      }),
    );
  });
});

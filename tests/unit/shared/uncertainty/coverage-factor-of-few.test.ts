import { coverageFactorOf } from '@ebbline/shared/uncertainty/degrees-of-freedom';
import { describe, expect, it } from 'vitest';

describe('coverage factor of few observations', () => {
  // JCGM 100:2008, table G.2, column 95.45 %; from memory.
  it.for([
    [1, 13.97],
    [2, 4.53],
    [3, 3.31],
    [5, 2.65],
    [10, 2.28],
    [20, 2.13],
  ] as const)('of %i degrees of freedom is %f', ([degrees, factor]) => {
    expect(Math.abs(coverageFactorOf(degrees) - factor)).toBeLessThanOrEqual(0.005);
  });
});

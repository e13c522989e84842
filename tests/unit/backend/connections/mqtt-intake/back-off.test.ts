import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { backOffMs } from '../../../../../backend/src/connections/mqtt-intake/back-off';

describe('the wait before a new attempt', () => {
  it('doubles up to half a minute', () => {
    expect([0, 1, 2, 6, 7, 50, 5000].map((attempt) => backOffMs(attempt, 0))).toEqual([
      250, 500, 1000, 16000, 30000, 30000, 30000,
    ]);
  });

  it('is shortened by chance to between a half and the whole', () => {
    fc.assert(
      fc.property(fc.nat(3000), fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), (attempt, random) => {
        const whole = backOffMs(attempt, 0);
        const wait = backOffMs(attempt, random);
        expect(wait).toBeLessThanOrEqual(whole);
        expect(wait).toBeGreaterThan(whole / 2 - 1e-9);
      }),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pickMoments } from '../../../../../backend/src/runner/trend-desk/pick-moments';

const hour = 3_600_000;
const noon = Date.UTC(2031, 4, 6, 12);

describe('the moments of a period', () => {
  it('stand on a grid that divides the day', () => {
    const moments = pickMoments(noon + 1, noon + hour + 1, 24);
    // An hour in 24 is 150 s: the next distance that divides a day is five minutes.
    expect(moments.map((ms) => (ms - noon) / 60_000)).toEqual([5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60]);
  });

  it('are the same ones while the period moves over them', () => {
    const [before, after] = [pickMoments(noon, noon + hour, 24), pickMoments(noon + 70_000, noon + hour + 70_000, 24)];
    expect(after.filter((ms) => before.includes(ms))).toHaveLength(11);
  });

  it('are whole seconds of the period, at least one and at most as many as asked for', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4e12 }),
        fc.integer({ min: 1000, max: 3.2e11 }),
        fc.integer({ min: 1, max: 60 }),
        (fromMs, lengthMs, most) => {
          const moments = pickMoments(fromMs, fromMs + lengthMs, most);
          expect(moments.length).toBeGreaterThanOrEqual(1);
          expect(moments.length).toBeLessThanOrEqual(most + 1);
          for (const ms of moments) {
            expect(ms % 1000).toBe(0);
            expect(ms >= fromMs - 1000 && ms < fromMs + lengthMs).toBe(true);
          }
        },
      ),
    );
  });
});

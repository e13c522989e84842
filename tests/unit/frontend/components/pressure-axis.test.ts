import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisTicks, pressureAxis, toX } from '../../../../frontend/src/components/pressure-axis';

describe('the pressure axis', () => {
  it('maps vacuum to its left end and its highest pressure to its right end', () => {
    const axis = pressureAxis([101_325], 660);
    expect(toX(axis, axis.minPa)).toBe(0);
    expect(toX(axis, axis.maxPa)).toBe(660);
  });

  it('is linear, as worked by hand: 55 kPa on an axis of 110 kPa stands in the middle', () => {
    expect(toX({ minPa: 0, maxPa: 110_000, x0: 0, x1: 660 }, 55_000)).toBe(330);
  });

  it('holds every pressure that it was made for, with a bank beyond it', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 1_000, max: 400_000, noNaN: true }), { minLength: 1 }), (pressures) => {
        const axis = pressureAxis(pressures, 500);
        for (const pa of pressures) {
          expect(toX(axis, pa)).toBeGreaterThanOrEqual(axis.x0);
          expect(axis.maxPa - pa).toBeGreaterThanOrEqual(5_999);
        }
      }),
    );
  });

  it('does not move when the weather moves a little', () => {
    expect(pressureAxis([100_900], 500)).toEqual(pressureAxis([101_700], 500));
  });

  it('keeps to one standard atmosphere while nothing is known', () => {
    expect(pressureAxis([null, null], 500).maxPa).toBe(110_000);
  });

  it('labels a narrow strip with fewer numbers', () => {
    const wide = axisTicks(pressureAxis([101_325], 600));
    const narrow = axisTicks(pressureAxis([101_325], 200));
    expect(wide).toEqual([0, 20_000, 40_000, 60_000, 80_000, 100_000]);
    expect(narrow).toEqual([0, 40_000, 80_000]);
  });
});

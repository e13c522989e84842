import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatQuantity } from '../../../../frontend/src/text/format-quantity';
import type { PrintedQuantity } from '../../../../frontend/src/text/format-quantity';
import type { HeldPlace } from '../../../../frontend/src/text/hold-place';
import { holdPlace, padOf } from '../../../../frontend/src/text/hold-place';

const printed = (number: string, unit = 'kPa'): PrintedQuantity => ({ number, unit, uncertainty: null, decimals: 1 });
const after = (...numbers: string[]): HeldPlace | undefined =>
  numbers.reduce<HeldPlace | undefined>((held, number) => holdPlace(held, printed(number)), undefined);

describe('the place of a number', () => {
  it.each([
    [['9.9'], '9.9', ''],
    [['10.0', '9.9'], '9.9', '1'],
    [['10.0', '9.9', '100.0'], '9.9', '10'],
    [['−0.4', '0.3'], '0.3', '−'],
    [['−0.4', '12.0'], '−0.4', '1'],
    [['12\u202f345'], '900', '12\u202f'],
  ])('after %j has %s stand behind as much as %j is wide', (before, now, pad) => {
    expect(padOf(after(...before, now), printed(now))).toBe(pad);
  });

  it('begins anew in another unit', () => {
    const held = holdPlace(after('100.0'), printed('1.2', 'psi'));
    expect(padOf(held, printed('1.2', 'psi'))).toBe('');
  });

  it('is kept while a word stands in it', () => {
    const held = holdPlace(after('100.0'), printed('yes'));
    expect(padOf(held, printed('yes'))).toBe('');
    expect(padOf(held, printed('9.0'))).toBe('10');
  });

  it('leaves the point and all behind it where they are, whatever came before', () => {
    const values = fc.array(fc.double({ noNaN: true, min: -1e8, max: 1e8 }), { minLength: 2, maxLength: 20 });
    fc.assert(
      fc.property(values, (series) => {
        let held: HeldPlace | undefined;
        let widest = 0;
        for (const value of series) {
          const now = formatQuantity(value, 'pressureDifference');
          held = holdPlace(held, now);
          const toPoint = (padOf(held, now) + now.number).split('.')[0]?.length ?? 0;
          // Only ever wider, by a digit or a sign that comes for the first time.
          expect(toPoint).toBeGreaterThanOrEqual(widest);
          widest = toPoint;
        }
      }),
    );
  });
});

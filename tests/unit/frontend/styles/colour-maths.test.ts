// @vitest-environment node
import { describe, expect, it } from 'vitest';
import type { Rgb } from '../../../helpers/colour-maths';
import { ciede2000, contrast, mixed } from '../../../helpers/colour-maths';

/** Computed from the equation in WCAG 2.2 (checks wcag-000000-ffffff and following); tolerance of the rows. */
const ratios = [
  ['#000000', '#ffffff', 21.0],
  ['#777777', '#ffffff', 4.478],
  ['#0000ff', '#ffffff', 8.592],
  ['#949494', '#ffffff', 3.033],
  ['#959595', '#ffffff', 2.995],
] as const;

/** Sharma, Wu, Dalal 2005, Color Research and Application 30(1), table 1: pairs of L*a*b* and their difference (from memory). */
const differences: readonly (readonly [Rgb, Rgb, number])[] = [
  [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
  [[50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
  [[50, 2.8361, -74.02], [50, 0, -82.7485], 3.4412],
  [[50, 2.5, 0], [50, 0, -2.5], 4.3065],
  [[50, 2.5, 0], [73, 25, -18], 27.1492],
  [[50, 2.5, 0], [61, -5, 29], 22.8977],
  [[50, 2.5, 0], [56, -27, -3], 31.903],
  [[50, 2.5, 0], [58, 24, 15], 19.4535],
  [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
  [[63.0109, -31.0961, -5.8663], [62.8187, -29.7946, -4.0864], 1.263],
  [[61.2901, 3.7196, -5.3901], [61.4292, 2.248, -4.962], 1.8731],
  [[22.7233, 20.0904, -46.694], [23.0331, 14.973, -42.5619], 2.0373],
  [[90.8027, -2.0831, 1.441], [91.1528, -1.6435, 0.0447], 1.4441],
];

describe('the contrast formula', () => {
  it.each(ratios)('gives the ratio of %s on %s as WCAG 2.2 has it', (one, other, expected) => {
    expect(Math.abs(contrast(one, other) - expected)).toBeLessThanOrEqual(0.0015);
  });
});

describe('the difference of two colours', () => {
  it.each(differences)('of %j and %j is as published', (one, other, expected) => {
    expect(ciede2000(one, other)).toBeCloseTo(expected, 4);
    expect(ciede2000(other, one)).toBeCloseTo(expected, 4);
  });
});

describe('a colour laid over another', () => {
  it('is between them as the browser encodes them', () => {
    expect(mixed('#ff0000', '#0000ff', 0.5)).toBe('#800080');
    expect(mixed('#123456', '#ffffff', 1)).toBe('#123456');
    expect(mixed('#123456', '#fedcba', 0)).toBe('#fedcba');
  });
});

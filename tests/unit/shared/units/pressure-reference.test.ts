import { describe, expect, it } from 'vitest';
import { gaugeToAbsolute, vacuumToAbsolute } from '@ebbline/shared/units/pressure-reference';
import { pascalAbsolute, pascalDifference, pascalGauge } from '@ebbline/shared/units/quantity';

describe('pressure reference', () => {
  it('adds ambient to a gauge reading, which is negative in a loop below ambient', () => {
    expect(gaugeToAbsolute(pascalGauge(-27_300), pascalAbsolute(101_300))).toBe(74_000);
  });

  it('takes a vacuum reading, which is positive below ambient, from ambient', () => {
    expect(vacuumToAbsolute(pascalDifference(69_300), pascalAbsolute(101_300))).toBe(32_000);
  });

  it('moves with the weather: the same gauge reading is 3 kPa less in a deep low', () => {
    expect(gaugeToAbsolute(pascalGauge(-27_300), pascalAbsolute(98_300))).toBe(71_000);
  });
});

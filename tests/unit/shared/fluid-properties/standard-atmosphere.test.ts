import { describe, expect, it } from 'vitest';
import {
  standardPressure,
  standardPressureChecked,
  standardTemperature,
} from '@ebbline/shared/fluid-properties/standard-atmosphere';
import { freeAirDensity } from '@ebbline/shared/fluid-properties/air';
import { metre } from '@ebbline/shared/units/quantity';

describe('standard atmosphere', () => {
  it('gives nothing outside −2000 … 11 000 m, where another layer begins (ISO 2533)', () => {
    expect(standardPressure(metre(-2001))).toBeNaN();
    expect(standardTemperature(metre(11_001))).toBeNaN();
    expect(standardPressureChecked(metre(12_000))).toMatchObject({ ok: false, fault: { code: 'FLUID_OUT_OF_RANGE' } });
  });

  it('ends the troposphere at 22 632 Pa and −56.5 °C (ISO 2533)', () => {
    expect(Math.abs(standardPressure(metre(11_000)) - 22_632)).toBeLessThan(1);
    expect(standardTemperature(metre(11_000))).toBeCloseTo(-56.5, 6);
  });

  it('has air of 1.204 kg/m³ at 20 °C and 101.325 kPa (from memory: handbook tables of dry air)', () => {
    expect(Math.abs(freeAirDensity - 1.204)).toBeLessThan(0.0005);
  });
});

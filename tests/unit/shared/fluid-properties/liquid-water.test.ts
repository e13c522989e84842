import { describe, expect, it } from 'vitest';
import {
  liquidWaterDensity,
  liquidWaterDensityChecked,
  liquidWaterHeatCapacity,
  liquidWaterHeatCapacityChecked,
  liquidWaterViscosity,
} from '@ebbline/shared/fluid-properties/liquid-water';
import { celsius } from '@ebbline/shared/units/quantity';

describe('liquid water', () => {
  it('is densest near 4 °C (999.97 kg/m³, VSMOW)', () => {
    const densest = liquidWaterDensity(celsius(3.98));
    expect(Math.abs(densest - 999.975)).toBeLessThan(0.005);
    expect(densest).toBeGreaterThan(liquidWaterDensity(celsius(3)));
    expect(densest).toBeGreaterThan(liquidWaterDensity(celsius(5)));
  });

  it.each([liquidWaterDensity, liquidWaterHeatCapacity, liquidWaterViscosity])(
    'gives no number outside −20 … 110 °C',
    (property) => {
      expect(property(celsius(-20.1))).toBeNaN();
      expect(property(celsius(110.1))).toBeNaN();
      expect(property(celsius(Number.NaN))).toBeNaN();
      expect(property(celsius(-20))).toBeGreaterThan(0);
      expect(property(celsius(110))).toBeGreaterThan(0);
    },
  );

  it('refuses with a code where a person asks', () => {
    expect(liquidWaterDensityChecked(celsius(120))).toMatchObject({ ok: false, fault: { code: 'FLUID_OUT_OF_RANGE' } });
    expect(liquidWaterHeatCapacityChecked(celsius(40))).toMatchObject({ ok: true });
  });
});

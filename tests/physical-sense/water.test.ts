import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  liquidWaterDensity,
  liquidWaterHeatCapacity,
  liquidWaterViscosity,
} from '@ebbline/shared/fluid-properties/liquid-water';
import { saturationPressure, saturationPressureSlope } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { saturationTemperature } from '@ebbline/shared/fluid-properties/saturation-temperature';
import { celsius, pascalAbsolute } from '@ebbline/shared/units/quantity';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('water, physically', () => {
  it('boils at the temperature whose vapour pressure it is under, over the whole range', () => {
    fc.assert(
      fc.property(between(0, 373.9), (t) => {
        expect(Math.abs(saturationTemperature(saturationPressure(celsius(t))) - t)).toBeLessThan(1e-6);
      }),
    );
  });

  it('comes back to its pressure over the whole range', () => {
    fc.assert(
      fc.property(between(611.22, 22.06e6), (p) => {
        expect(Math.abs(saturationPressure(saturationTemperature(pascalAbsolute(p))) / p - 1)).toBeLessThan(1e-8);
      }),
    );
  });

  it('has a vapour pressure that rises with temperature, ever faster', () => {
    fc.assert(
      fc.property(between(0.1, 372), between(0.001, 1), (t, step) => {
        expect(saturationPressure(celsius(t + step))).toBeGreaterThan(saturationPressure(celsius(t)));
        expect(saturationPressureSlope(celsius(t + 1))).toBeGreaterThan(saturationPressureSlope(celsius(t)));
      }),
    );
  });

  it('thins and expands as it warms above 4 °C', () => {
    fc.assert(
      fc.property(between(4, 109), between(0.01, 1), (t, step) => {
        expect(liquidWaterDensity(celsius(t + step))).toBeLessThan(liquidWaterDensity(celsius(t)));
        expect(liquidWaterViscosity(celsius(t + step))).toBeLessThan(liquidWaterViscosity(celsius(t)));
      }),
    );
  });

  it('takes between 4170 and 4230 J for a kelvin and a kilogram between 0 and 100 °C (any steam table)', () => {
    fc.assert(fc.property(between(0, 100), (t) => Math.abs(liquidWaterHeatCapacity(celsius(t)) - 4200) <= 30));
  });

  it.each([
    ['water-45C-20kPa', 990.187],
    ['water-45C-400kPa', 990.354],
  ])('may be taken without its pressure: %s differs by less than 0.17 kg/m³ (IAPWS R7-97 region 1)', (_, density) => {
    expect(Math.abs(liquidWaterDensity(celsius(45)) - density)).toBeLessThan(0.17);
  });
});

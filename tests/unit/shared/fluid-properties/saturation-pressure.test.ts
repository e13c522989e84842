import { describe, expect, it } from 'vitest';
import {
  saturationPressure,
  saturationPressureChecked,
  saturationPressureSlope,
} from '@ebbline/shared/fluid-properties/saturation-pressure';
import {
  saturationTemperature,
  saturationTemperatureChecked,
} from '@ebbline/shared/fluid-properties/saturation-temperature';
import { celsius, pascalAbsolute } from '@ebbline/shared/units/quantity';

describe('saturation of water', () => {
  it('holds at both ends of its range and nowhere beyond', () => {
    expect(saturationPressure(celsius(0))).toBeCloseTo(611.213, 3);
    expect(saturationPressure(celsius(373.946))).toBeGreaterThan(22.06e6);
    expect(saturationPressure(celsius(-0.001))).toBeNaN();
    expect(saturationPressure(celsius(373.95))).toBeNaN();
    expect(saturationPressure(celsius(Number.NaN))).toBeNaN();
    expect(saturationTemperature(pascalAbsolute(611.2))).toBeNaN();
    expect(saturationTemperature(pascalAbsolute(22.065e6))).toBeNaN();
  });

  it('says with a code and the range what is wrong, where a person asks', () => {
    const refused = saturationPressureChecked(celsius(-5));
    expect(refused).toMatchObject({ ok: false, fault: { code: 'FLUID_OUT_OF_RANGE' } });
    expect(refused.ok ? '' : refused.fault.message).toMatch(/temperature -5 °C is outside 0 … 373.9/);
    expect(saturationPressureChecked(celsius(45))).toMatchObject({ ok: true });
    expect(saturationTemperatureChecked(pascalAbsolute(100))).toMatchObject({ ok: false });
  });

  it('rises by 490 Pa/K at 45 °C, as the Clausius–Clapeyron equation asks (Δh 2394 kJ/kg, Δv 15.25 m³/kg: steam tables)', () => {
    const clausiusClapeyron = 2394e3 / (318.15 * 15.25);
    expect(Math.abs(saturationPressureSlope(celsius(45)) / clausiusClapeyron - 1)).toBeLessThan(0.005);
  });

  it('has the slope of its own curve over the whole range, to 1e-6 of it', () => {
    const step = 0.01;
    for (let t = 0.02; t < 373.9; t += 0.37) {
      const across = (saturationPressure(celsius(t + step)) - saturationPressure(celsius(t - step))) / (2 * step);
      expect(Math.abs(saturationPressureSlope(celsius(t)) / across - 1)).toBeLessThan(1e-6);
    }
    expect(saturationPressureSlope(celsius(0))).toBeGreaterThan(0);
    expect(saturationPressureSlope(celsius(-0.001))).toBeNaN();
    expect(saturationPressureSlope(celsius(374))).toBeNaN();
    expect(saturationPressureSlope(celsius(Number.NaN))).toBeNaN();
  });
});

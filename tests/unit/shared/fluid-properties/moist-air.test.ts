import { describe, expect, it } from 'vitest';
import {
  dewPoint,
  dewPointByHumidity,
  dewPointByTemperature,
  saturatedAirVapourPressure,
} from '@ebbline/shared/fluid-properties/moist-air';
import { celsius } from '@ebbline/shared/units/quantity';

describe('moist air', () => {
  it('is saturated at its own dew point', () => {
    const dew = dewPoint(celsius(25), 0.5);
    expect(saturatedAirVapourPressure(dew)).toBeCloseTo(0.5 * saturatedAirVapourPressure(celsius(25)), 6);
    expect(dewPoint(celsius(25), 1)).toBeCloseTo(25, 10);
  });

  it.each([
    [25, 0],
    [25, -0.1],
    [25, 1.01],
    [-46, 0.5],
    [61, 0.5],
    [Number.NaN, 0.5],
    [25, Number.NaN],
  ])('gives no dew point for %d °C and a humidity of %d', (temperature, humidity) => {
    expect(dewPoint(celsius(temperature), humidity)).toBeNaN();
  });

  it('has the sensitivities that finite differences give', () => {
    const h = 1e-4;
    const byTemperature = (dewPoint(celsius(25 + h), 0.5) - dewPoint(celsius(25 - h), 0.5)) / (2 * h);
    const byHumidity = (dewPoint(celsius(25), 0.5 + h) - dewPoint(celsius(25), 0.5 - h)) / (2 * h);
    expect(dewPointByTemperature(celsius(25), 0.5)).toBeCloseTo(byTemperature, 6);
    expect(dewPointByHumidity(celsius(25), 0.5)).toBeCloseTo(byHumidity, 4);
  });
});

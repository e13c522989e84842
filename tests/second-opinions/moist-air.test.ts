import psychrolib from 'psychrolib';
import { beforeAll, describe, expect, it } from 'vitest';
import { dewPoint, saturatedAirVapourPressure } from '@ebbline/shared/fluid-properties/moist-air';
import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { standardPressure } from '@ebbline/shared/fluid-properties/standard-atmosphere';
import { celsius, metre } from '@ebbline/shared/units/quantity';
import { range, worstDifference, worstShare } from './ask-python';

const temperatures = range(5, 50, 46);
const humidities = range(0.2, 1, 17);
/** Below 0 °C theirs gives the frost point over ice, ours the dew point over water: not compared. */
const rooms = temperatures
  .flatMap((t) => humidities.map((rh) => [t, rh] as const))
  .filter(([t, rh]) => dewPoint(celsius(t), rh) > 0.5);

describe('moist air, as the library psychrolib has it', () => {
  beforeAll(() => {
    psychrolib.SetUnitSystem(psychrolib.SI);
  });

  /** Hyland & Wexler's equation of the ASHRAE Handbook against the Magnus form of WMO-No. 8, which states 0.6 % from −45 to 60 °C. */
  it('has a dew point within 0.06 K, in every room from 5 to 50 °C whose dew point is above freezing', () => {
    const ours = rooms.map(([t, rh]) => dewPoint(celsius(t), rh));
    const theirs = rooms.map(([t, rh]) => psychrolib.GetTDewPointFromRelHum(t, rh));
    expect(rooms.length).toBeGreaterThan(500);
    expect(worstDifference(ours, theirs)).toBeLessThan(0.06);
  });

  it('has a saturation pressure within what the Magnus form states, and within 0.03 % of that of the boiling margin', () => {
    const theirs = temperatures.map((t) => psychrolib.GetSatVapPres(t));
    expect(
      worstShare(
        temperatures.map((t) => saturatedAirVapourPressure(celsius(t))),
        theirs,
      ),
    ).toBeLessThan(0.006);
    expect(
      worstShare(
        temperatures.map((t) => saturationPressure(celsius(t))),
        theirs,
      ),
    ).toBeLessThan(3e-4);
  });

  /** The handbook rounds the exponent to 5.2559 and the lapse to 2.25577e-5. */
  it('has a standard pressure within 0.01 % from sea level to 4 000 m', () => {
    const altitudes = range(0, 4_000, 41);
    const theirs = altitudes.map((z) => psychrolib.GetStandardAtmPressure(z));
    expect(
      worstShare(
        altitudes.map((z) => standardPressure(metre(z))),
        theirs,
      ),
    ).toBeLessThan(1e-4);
  });
});

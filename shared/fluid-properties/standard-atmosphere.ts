import { standardAtmospherePa, standardGravityMPerS2 } from '../units/constants';
import { celsius, metre, pascalAbsolute, type Celsius, type Metre, type PascalAbsolute } from '../units/quantity';
import { airGasConstant } from './air';
import { withRangeCheck, type ValidRange } from './valid-range';

/** ISO 2533:1975: sea level temperature, K; lapse rate of the troposphere, K/m; nominal radius of the Earth, m. */
const seaLevelK = 288.15;
const lapseKPerM = 0.0065;
const earthRadiusM = 6_356_766;
const exponent = standardGravityMPerS2 / (airGasConstant * lapseKPerM);

export const standardAtmosphereRange: ValidRange = {
  equation: 'ISO 2533:1975 (troposphere)',
  quantity: 'geopotential altitude',
  unit: 'm',
  minimum: -2000,
  maximum: 11_000,
};

/** Geopotential altitude from geometric: H = r h/(r + h). At 2000 m they differ by 0.6 m (6 Pa). */
export const geopotentialAltitude = (geometric: Metre): Metre =>
  metre((earthRadiusM * geometric) / (earthRadiusM + geometric));

/** Pressure of the standard atmosphere at a geopotential altitude, −2000 … 11 000 m; NaN outside. Weather moves the real one by about 3 kPa. */
export function standardPressure(geopotential: Metre): PascalAbsolute {
  if (!inRange(geopotential)) return pascalAbsolute(Number.NaN);
  return pascalAbsolute(standardAtmospherePa * (1 - (lapseKPerM * geopotential) / seaLevelK) ** exponent);
}

/** Temperature of the standard atmosphere at a geopotential altitude, −2000 … 11 000 m; NaN outside. */
export function standardTemperature(geopotential: Metre): Celsius {
  return celsius(inRange(geopotential) ? seaLevelK - lapseKPerM * geopotential - 273.15 : Number.NaN);
}

export const standardPressureChecked = withRangeCheck(standardAtmosphereRange, standardPressure);

function inRange(geopotential: number): boolean {
  return geopotential >= standardAtmosphereRange.minimum && geopotential <= standardAtmosphereRange.maximum;
}

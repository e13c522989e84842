import { celsius, pascalAbsolute, type Celsius, type PascalAbsolute } from '../units/quantity';
import type { ValidRange } from './valid-range';

/** WMO-No. 8, annex 4.B, over water: e_w = 6.112 exp[17.62 t/(243.12 + t)] hPa. */
const factorPa = 611.2;
const slope = 17.62;
const poleC = 243.12;

export const moistAirRange: ValidRange = {
  equation: 'WMO-No. 8 annex 4.B (over water)',
  quantity: 'temperature',
  unit: '°C',
  minimum: -45,
  maximum: 60,
};

const inRange = (temperature: number): boolean =>
  temperature >= moistAirRange.minimum && temperature <= moistAirRange.maximum;

/** Vapour pressure of saturated air over water, pure phase. −45 … 60 °C; NaN outside. */
export function saturatedAirVapourPressure(temperature: Celsius): PascalAbsolute {
  return pascalAbsolute(
    inRange(temperature) ? factorPa * Math.exp((slope * temperature) / (poleC + temperature)) : Number.NaN,
  );
}

/**
 * Temperature of a surface on which water of this air condenses. `relativeHumidity` as a ratio, above 0 to 1;
 * −45 … 60 °C; NaN outside. Needs no pressure. WMO-No. 8, annex 4.B.
 */
export function dewPoint(temperature: Celsius, relativeHumidity: number): Celsius {
  if (!(inRange(temperature) && relativeHumidity > 0 && relativeHumidity <= 1)) return celsius(Number.NaN);
  const x = Math.log(relativeHumidity) + (slope * temperature) / (poleC + temperature);
  return celsius((poleC * x) / (slope - x));
}

/** ∂t_d/∂t, K/K, by differentiating the formula above. */
export function dewPointByTemperature(temperature: Celsius, relativeHumidity: number): number {
  return (dewPointByLogHumidity(temperature, relativeHumidity) * slope * poleC) / (poleC + temperature) ** 2;
}

/** ∂t_d/∂(RH as a ratio), K. */
export function dewPointByHumidity(temperature: Celsius, relativeHumidity: number): number {
  return dewPointByLogHumidity(temperature, relativeHumidity) / relativeHumidity;
}

function dewPointByLogHumidity(temperature: Celsius, relativeHumidity: number): number {
  const x = Math.log(relativeHumidity) + (slope * temperature) / (poleC + temperature);
  return (slope * poleC) / (slope - x) ** 2;
}

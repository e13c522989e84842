import { zeroCelsiusK } from '../units/constants';
import { pascalAbsolute, type Celsius, type PascalAbsolute } from '../units/quantity';

/** Triple point of water, K. */
const tripleK = 273.16;

/**
 * Vapour pressure over water by Goff (1957), as 40 CFR 1065.645(a) states it: the equation of emission measurement, −50 … 100 °C;
 * NaN outside. Here only to be held against the shorter equation of WMO-No. 8 and in worked examples.
 */
export function goffVapourPressure(temperature: Celsius): PascalAbsolute {
  if (!(temperature >= -50 && temperature <= 100)) return pascalAbsolute(Number.NaN);
  const kelvin = temperature + zeroCelsiusK;
  const ratio = kelvin / tripleK;
  const log10KiloPascal =
    10.79574 * (1 - 1 / ratio) -
    5.028 * Math.log10(ratio) +
    1.50475e-4 * (1 - 10 ** (-8.2969 * (ratio - 1))) +
    0.42873e-3 * (10 ** (4.76955 * (1 - 1 / ratio)) - 1) -
    0.2138602;
  return pascalAbsolute(1000 * 10 ** log10KiloPascal);
}

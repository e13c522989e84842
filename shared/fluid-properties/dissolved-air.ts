import { standardAtmospherePa, zeroCelsiusK } from '../units/constants';
import type { Celsius, PascalAbsolute } from '../units/quantity';
import { saturationPressure } from './saturation-pressure';

type Coefficients = readonly [a1: number, a2: number, a3: number, a4: number];

/** Weiss (1970), Deep-Sea Research 17:721–735, equation 4 and its table of coefficients, fresh water, mL(STP)/L. */
const oxygen: Coefficients = [-173.4292, 249.6339, 143.3483, -21.8492];
const nitrogen: Coefficients = [-172.4965, 248.4262, 143.0738, -21.712];

function solubility([a1, a2, a3, a4]: Coefficients, temperature: Celsius): number {
  const t = (temperature + zeroCelsiusK) / 100;
  return Math.exp(a1 + a2 / t + a3 * Math.log(t) + a4 * t);
}

/** Oxygen in water under moist air at 1 atm, mL(STP)/L. Weiss (1970), 0 … 40 °C; above it is extrapolated. */
export const oxygenSolubility = (temperature: Celsius): number => solubility(oxygen, temperature);

/** Nitrogen likewise. */
export const nitrogenSolubility = (temperature: Celsius): number => solubility(nitrogen, temperature);

/**
 * Oxygen and nitrogen that water holds under moist air of a pressure, as a share: m³ of gas at 0 °C and 101.325 kPa a m³ of
 * water. Henry proportionality: C = C* (p − p_v)/(101 325 − p_v); 0 where the water boils.
 */
export function dissolvedAir(temperature: Celsius, pressure: PascalAbsolute): number {
  const vapour = saturationPressure(temperature);
  const atOneAtmosphere = (oxygenSolubility(temperature) + nitrogenSolubility(temperature)) / 1000;
  return (atOneAtmosphere * Math.max(0, pressure - vapour)) / (standardAtmospherePa - vapour);
}

/** What water gives off between two pressures, the same share; 0 where it would take up. */
export const releasedAir = (temperature: Celsius, from: PascalAbsolute, to: PascalAbsolute): number =>
  Math.max(0, dissolvedAir(temperature, from) - dissolvedAir(temperature, to));

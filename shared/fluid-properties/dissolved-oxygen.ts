import { zeroCelsiusK } from '../units/constants';
import type { Celsius } from '../units/quantity';
import type { ValidRange } from './valid-range';

export const oxygenSaturationRange: ValidRange = {
  equation: 'Benson and Krause (1984)',
  quantity: 'temperature',
  unit: '°C',
  minimum: 0,
  maximum: 40,
};

/**
 * Oxygen in fresh water under moist air at 101.325 kPa, mg/L. Benson and Krause, Limnology and Oceanography 29 (1984) 620–632, as
 * in Standard Methods 4500-O (APHA 1985); the saturation table of ISO 5814 is the same. 0 … 40 °C; NaN outside.
 */
export function oxygenSaturation(temperature: Celsius): number {
  if (!(temperature >= oxygenSaturationRange.minimum && temperature <= oxygenSaturationRange.maximum))
    return Number.NaN;
  const inverse = 1 / (temperature + zeroCelsiusK);
  return Math.exp(
    -139.34411 + inverse * (1.575701e5 + inverse * (-6.642308e7 + inverse * (1.2438e10 + inverse * -8.621949e11))),
  );
}

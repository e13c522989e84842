import { zeroCelsiusK } from '../units/constants';
import { celsius, pascalAbsolute, type Celsius, type PascalAbsolute } from '../units/quantity';
import { n1, n10, n2, n3, n4, n5, n6, n7, n8, n9 } from './if97-region-4';
import { withRangeCheck, type ValidRange } from './valid-range';

export const saturationPressureRange: ValidRange = {
  equation: 'IAPWS R7-97(2012) equation 30',
  quantity: 'temperature',
  unit: '°C',
  minimum: 0,
  maximum: 373.946,
};

/**
 * Vapour pressure of water: below it water boils. IAPWS R7-97(2012) equation 30, 0 … 373.946 °C;
 * NaN outside. Closed form, one square root: cheap enough for the hot path as it is.
 */
export function saturationPressure(temperature: Celsius): PascalAbsolute {
  if (!(temperature >= saturationPressureRange.minimum && temperature <= saturationPressureRange.maximum))
    return pascalAbsolute(Number.NaN);
  const kelvin = temperature + zeroCelsiusK;
  const theta = kelvin + n9 / (kelvin - n10);
  const a = (theta + n1) * theta + n2;
  const b = (n3 * theta + n4) * theta + n5;
  const c = (n6 * theta + n7) * theta + n8;
  const root = (2 * c) / (-b + Math.sqrt(b * b - 4 * a * c));
  const square = root * root;
  return pascalAbsolute(square * square * 1e6);
}

export const saturationPressureChecked = withRangeCheck(saturationPressureRange, saturationPressure);

/** dp_v/dt, Pa/K, by a central difference of ± 0.01 K (error below 1e-6 of the slope); NaN at the ends of the range. */
export function saturationPressureSlope(temperature: Celsius): number {
  const step = 0.01;
  return (
    (saturationPressure(celsius(temperature + step)) - saturationPressure(celsius(temperature - step))) / (2 * step)
  );
}

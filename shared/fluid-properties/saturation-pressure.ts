import { zeroCelsiusK } from '../units/constants';
import { pascalAbsolute, type Celsius, type PascalAbsolute } from '../units/quantity';
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

/**
 * dp_v/dt, Pa/K: equation 30 differentiated. With p = (2 C/D)⁴, D = −B + √(B² − 4 A C), each a square of ϑ: p' = 4 p (C'/C − D'/D) ϑ'.
 * NaN outside 0 … 373.946 °C.
 */
export function saturationPressureSlope(temperature: Celsius): number {
  if (!(temperature >= saturationPressureRange.minimum && temperature <= saturationPressureRange.maximum))
    return Number.NaN;
  const kelvin = temperature + zeroCelsiusK;
  const pole = 1 / (kelvin - n10);
  const theta = kelvin + n9 * pole;
  const a = (theta + n1) * theta + n2;
  const b = (n3 * theta + n4) * theta + n5;
  const c = (n6 * theta + n7) * theta + n8;
  const aMoves = 2 * theta + n1;
  const bMoves = 2 * n3 * theta + n4;
  const cMoves = 2 * n6 * theta + n7;
  const root = Math.sqrt(b * b - 4 * a * c);
  const below = root - b;
  const belowMoves = (b * bMoves - 2 * (aMoves * c + a * cMoves)) / root - bMoves;
  const share = (2 * c) / below;
  const square = share * share;
  return 4e6 * square * square * (cMoves / c - belowMoves / below) * (1 - n9 * pole * pole);
}

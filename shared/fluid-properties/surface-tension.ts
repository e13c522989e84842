import { zeroCelsiusK } from '../units/constants';
import type { Celsius } from '../units/quantity';
import { withRangeCheck, type ValidRange } from './valid-range';

export const surfaceTensionRange: ValidRange = {
  equation: 'IAPWS R1-76(2014)',
  quantity: 'temperature',
  unit: '°C',
  minimum: -25,
  maximum: 373.946,
};

/** Surface tension of water against its vapour, N/m. IAPWS R1-76(2014): 235.8 mN/m · τ^1.256 · (1 − 0.625 τ); −25 … 373.946 °C; NaN outside. */
export function surfaceTension(temperature: Celsius): number {
  if (!(temperature >= surfaceTensionRange.minimum && temperature <= surfaceTensionRange.maximum)) return Number.NaN;
  const tau = 1 - (temperature + zeroCelsiusK) / 647.096;
  return 0.2358 * tau ** 1.256 * (1 - 0.625 * tau);
}

export const surfaceTensionChecked = withRangeCheck(surfaceTensionRange, surfaceTension);

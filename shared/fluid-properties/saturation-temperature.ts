import { zeroCelsiusK } from '../units/constants';
import { celsius, type Celsius, type PascalAbsolute } from '../units/quantity';
import { n1, n10, n2, n3, n4, n5, n6, n7, n8, n9 } from './if97-region-4';
import { withRangeCheck, type ValidRange } from './valid-range';

export const saturationTemperatureRange: ValidRange = {
  equation: 'IAPWS R7-97(2012) equation 31',
  quantity: 'pressure',
  unit: 'Pa',
  // The release prints 611.213 Pa: the pressure of equation 30 at 273.15 K, rounded. The next digits let the ends of both equations meet.
  minimum: 611.2126,
  maximum: 22.064e6,
};

/** Temperature at which water boils at an absolute pressure. IAPWS R7-97(2012) equation 31, 611.213 Pa … 22.064 MPa; NaN outside. */
export function saturationTemperature(pressure: PascalAbsolute): Celsius {
  if (!(pressure >= saturationTemperatureRange.minimum && pressure <= saturationTemperatureRange.maximum))
    return celsius(Number.NaN);
  const beta = Math.sqrt(Math.sqrt(pressure * 1e-6));
  const e = (beta + n3) * beta + n6;
  const f = (n1 * beta + n4) * beta + n7;
  const g = (n2 * beta + n5) * beta + n8;
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g));
  const sum = n10 + d;
  return celsius((sum - Math.sqrt(sum * sum - 4 * (n9 + n10 * d))) / 2 - zeroCelsiusK);
}

export const saturationTemperatureChecked = withRangeCheck(saturationTemperatureRange, saturationTemperature);

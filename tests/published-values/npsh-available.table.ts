import { liquidWaterDensity } from '@ebbline/shared/fluid-properties/liquid-water';
import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { npshAvailable } from '@ebbline/shared/hydraulics/npsh';
import { celsius } from '@ebbline/shared/units/quantity';
import { absolute, type PublishedTable } from './published-table';

export const npshAvailableTable: PublishedTable = {
  title: 'NPSH available, m, of p_in kPa, v m/s, t °C',
  subject: { equation: npshAvailable },
  evaluate: (equation, { p_in = Number.NaN, v = Number.NaN, t = Number.NaN }) =>
    equation(p_in * 1000, saturationPressure(celsius(t)), liquidWaterDensity(celsius(t)), v),
  rows: [
    {
      id: 'npsh-si',
      source:
        'ISO 9906:2012 definition NPSH = H1 - z_D + (p_amb - p_v)/(rho g) = (p_abs - p_v)/(rho g) + v2/2g (computed)',
      inputs: { p_in: 30.0, v: 1.2, t: 45 },
      expected: 2.1748,
      tolerance: absolute(0.002),
    },
  ],
};

import { liquidWaterDensity } from '@ebbline/shared/fluid-properties/liquid-water';
import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { standardGravityMPerS2 } from '@ebbline/shared/units/constants';
import { staticHead } from '@ebbline/shared/hydraulics/static-head';
import { celsius, metre } from '@ebbline/shared/units/quantity';
import { onUnitM } from './on-unit-m';
import { absolute, type PublishedTable } from './published-table';

export const npshAvailableTable: PublishedTable = {
  title: 'NPSH available, m, of p_in kPa, v m/s, t °C',
  subject: { point: 'npshAvailable' },
  evaluate: (equation, { p_in = Number.NaN, v = Number.NaN, t = Number.NaN }) =>
    equation(p_in * 1000, saturationPressure(celsius(t)), liquidWaterDensity(celsius(t)), v),
  onSite: {
    point: 'lowerWallMargin',
    // With a limit of 0 m the margin is NPSH available itself, but for the velocity head that is left out.
    evaluate: ({ p_in = Number.NaN, v = Number.NaN, t = Number.NaN }) =>
      onUnitM(
        'lowerWallMargin',
        { 'pump.inlet.pressure': p_in * 1000, 'return.temperature': t },
        { without: ['supply.pressure', 'return.pressure'], design: { npshLimitM: 0 } },
      ) /
        (liquidWaterDensity(celsius(t)) * standardGravityMPerS2) +
      (v * v) / (2 * standardGravityMPerS2),
  },
  rows: [
    {
      id: 'npsh-si',
      status: 'computed',
      source:
        'ISO 9906:2012 definition NPSH = H1 - z_D + (p_amb - p_v)/(rho g) = (p_abs - p_v)/(rho g) + v2/2g (computed)',
      inputs: { p_in: 30.0, v: 1.2, t: 45 },
      expected: 2.1748,
      tolerance: absolute(0.002),
    },
  ],
};

/** Without a sensor at the inlet: separator, the column over the pump, and the loss of the suction pipe. */
export const npshBySeparatorTable: PublishedTable = {
  title: 'NPSH available, m, of p_separator kPa, column m, loss kPa, t °C',
  subject: { point: 'npshAvailable' },
  evaluate: (equation, { p_separator = Number.NaN, column = Number.NaN, loss = Number.NaN, t = Number.NaN }) => {
    const density = liquidWaterDensity(celsius(t));
    const inlet = (p_separator - loss) * 1000 + staticHead(density, metre(column));
    return equation(inlet, saturationPressure(celsius(t)), density);
  },
  onSite: {
    point: 'lowerWallMargin',
    evaluate: ({ t = Number.NaN }) =>
      onUnitM('lowerWallMargin', {}) / (liquidWaterDensity(celsius(t)) * standardGravityMPerS2) + 2.1,
  },
  rows: [
    {
      id: 'unit-m-npsh available',
      status: 'computed',
      source: 'parameter set of unit M, computed by hand; printed to one decimal',
      inputs: { p_separator: 32, column: 0.45, loss: 2.43, t: 45 },
      expected: 2.5,
      tolerance: absolute(0.05),
    },
  ],
};

export const npshOnSiteTable: PublishedTable = {
  ...npshAvailableTable,
  title: 'NPSH available of a site, m (its velocity head is left out there and added here)',
  onSite: {
    point: 'npshAvailable',
    evaluate: ({ p_in = Number.NaN, v = Number.NaN, t = Number.NaN }) =>
      onUnitM(
        'npshAvailable',
        { 'pump.inlet.pressure': p_in * 1000, 'return.temperature': t },
        { without: ['supply.pressure', 'return.pressure'] },
      ) +
      (v * v) / (2 * standardGravityMPerS2),
  },
};

import { liquidWaterDensity } from '@ebbline/shared/fluid-properties/liquid-water';
import { supplyMainPressure } from '@ebbline/shared/hydraulics/main-pressure';
import { celsius } from '@ebbline/shared/units/quantity';
import { absolute, type PublishedTable } from './published-table';

export const mainPressureTable: PublishedTable = {
  title: 'pressure, kPa, at z_top m from a sensor at z_sensor m, no flow, water at t °C',
  subject: { equation: supplyMainPressure },
  evaluate: (equation, { p_sensor = Number.NaN, z_sensor = Number.NaN, z_top = Number.NaN, t = Number.NaN }) =>
    equation(p_sensor * 1000, liquidWaterDensity(celsius(t)), z_sensor, z_top, 0) / 1000,
  rows: [
    {
      id: 'static-profile',
      status: 'computed',
      source: 'Bernoulli with zero loss (computed)',
      inputs: { p_sensor: 55.0, z_sensor: 0.4, z_top: 2.2, t: 40 },
      expected: 37.485,
      tolerance: absolute(0.002),
    },
  ],
};

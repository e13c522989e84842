import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { equilibriumPressure } from '@ebbline/shared/hydraulics/vacuum-suction';
import { celsius } from '@ebbline/shared/units/quantity';
import { absolute, type PublishedTable } from './published-table';

export const equilibriumPressureTable: PublishedTable = {
  title: 'pressure, kPa, at which S L/s carries Q Pa L/s over water at t °C',
  subject: { equation: equilibriumPressure },
  evaluate: (equation, { Q = Number.NaN, S = Number.NaN, t = Number.NaN }) =>
    equation(Q / 1000, S / 1000, saturationPressure(celsius(t))) / 1000,
  rows: [
    {
      id: 'pumpdown-ultimate',
      status: 'computed',
      source: 'throughput balance + Dalton (computed)',
      inputs: { Q: 500, S: 2.0, t: 30 },
      expected: 4.4967,
      tolerance: absolute(0.001),
    },
  ],
};

import { liquidWaterDensity } from '@ebbline/shared/fluid-properties/liquid-water';
import { staticHead } from '@ebbline/shared/hydraulics/static-head';
import { celsius } from '@ebbline/shared/units/quantity';
import { absolute, type PublishedTable } from './published-table';

export const staticHeadTable: PublishedTable = {
  title: 'static head, Pa, of dz m of water at t °C',
  subject: { equation: staticHead },
  evaluate: (equation, { dz, t }) => equation(liquidWaterDensity(celsius(t ?? Number.NaN)), dz ?? Number.NaN),
  rows: [
    {
      id: 'static-2-45',
      status: 'computed',
      source: 'hydrostatics; density IAPWS SR6-08 (computed)',
      inputs: { dz: 2.0, t: 45 },
      expected: 19421.3,
      tolerance: absolute(1.0),
    },
    {
      id: 'static-10-25',
      status: 'computed',
      source: 'hydrostatics; density IAPWS SR6-08 (computed)',
      inputs: { dz: 10.0, t: 25 },
      expected: 97776.9,
      tolerance: absolute(1.0),
    },
  ],
};

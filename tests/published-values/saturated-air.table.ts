import { saturatedAirVapourPressure } from '@ebbline/shared/fluid-properties/moist-air';
import { absolute, type PublishedTable } from './published-table';

export const saturatedAirTable: PublishedTable = {
  title: 'vapour pressure of saturated air, hPa, at t °C',
  subject: { equation: saturatedAirVapourPressure },
  evaluate: (equation, { t }) => equation(t ?? Number.NaN) / 100,
  rows: [
    {
      id: 'wmo-es-10',
      status: 'published',
      source: 'WMO-No. 8 Annex 4.B, e_w = 6.112 exp(17.62 t/(243.12+t))',
      inputs: { t: 10 },
      expected: 12.26,
      tolerance: absolute(0.001),
    },
    {
      id: 'wmo-es-20',
      status: 'published',
      source: 'WMO-No. 8 Annex 4.B, e_w = 6.112 exp(17.62 t/(243.12+t))',
      inputs: { t: 20 },
      expected: 23.326,
      tolerance: absolute(0.001),
    },
    {
      id: 'wmo-es-40',
      status: 'published',
      source: 'WMO-No. 8 Annex 4.B, e_w = 6.112 exp(17.62 t/(243.12+t))',
      inputs: { t: 40 },
      expected: 73.675,
      tolerance: absolute(0.001),
    },
  ],
};

import { subcooling } from '@ebbline/shared/hydraulics/pressure-margins';
import { absolute, type PublishedTable } from './published-table';

export const subcoolingTable: PublishedTable = {
  title: 'subcooling, K, at p kPa and t °C',
  subject: { equation: subcooling },
  evaluate: (equation, { p_min = Number.NaN, t = Number.NaN }) => equation(p_min * 1000, t),
  rows: [
    {
      id: 'boiling-margin subcooling',
      status: 'published',
      source: 'IAPWS R7-97 region 4',
      inputs: { p_min: 22.0, t: 50 },
      expected: 12.133,
      tolerance: absolute(0.002),
    },
  ],
};

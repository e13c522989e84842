import { absolute, type PublishedTable } from './published-table';

export const heatRemovedTable: PublishedTable = {
  title: 'heat removed, W, of m kg/s, c_p J/(kg K), °C',
  subject: { point: 'heatRemoved' },
  evaluate: (equation, { m = Number.NaN, cp = Number.NaN, t_supply = Number.NaN, t_return = Number.NaN }) =>
    equation(m, cp, t_supply, t_return),
  rows: [
    {
      id: 'heat-u-10K Q',
      status: 'computed',
      source: 'JCGM 100:2008 eq. (10)/(12) applied to Q = m cp dT (computed)',
      inputs: { m: 1.2, cp: 4179.4, t_supply: 35, t_return: 45 },
      expected: 50152.8,
      tolerance: absolute(0.1),
    },
    {
      id: 'heat-u-2K Q',
      status: 'computed',
      source: 'JCGM 100:2008 eq. (10) (computed)',
      inputs: { m: 1.2, cp: 4179.4, t_supply: 35, t_return: 37 },
      expected: 10030.6,
      tolerance: absolute(0.1),
    },
  ],
};

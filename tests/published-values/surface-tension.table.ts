import { surfaceTension } from '@ebbline/shared/fluid-properties/surface-tension';
import { absolute, type PublishedTable } from './published-table';

export const surfaceTensionTable: PublishedTable = {
  title: 'surface tension of water, mN/m',
  subject: { equation: surfaceTension },
  evaluate: (equation, { t = 0 }) => equation(t) * 1000,
  rows: [
    {
      id: 'sigma-20',
      status: 'published',
      source: 'IAPWS R1-76(2014), Table 1',
      inputs: { t: 20 },
      expected: 72.74,
      tolerance: absolute(0.006),
    },
    {
      id: 'sigma-40',
      status: 'published',
      source: 'IAPWS R1-76(2014), Table 1',
      inputs: { t: 40 },
      expected: 69.6,
      tolerance: absolute(0.006),
    },
    {
      id: 'sigma-50',
      status: 'published',
      source: 'IAPWS R1-76(2014), Table 1',
      inputs: { t: 50 },
      expected: 67.94,
      tolerance: absolute(0.006),
    },
  ],
};

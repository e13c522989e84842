import { electrodeSlope } from '@ebbline/shared/fluid-properties/ph-electrode';
import { relative, type PublishedTable } from './published-table';

export const molarGasConstantTable: PublishedTable = {
  title: 'molar gas constant behind the slope of a pH electrode, J/(mol K)',
  subject: { equation: electrodeSlope },
  evaluate: (equation) => (equation(25) * 96_485.33212) / (298.15 * Math.LN10),
  rows: [
    {
      id: 'const-R',
      status: 'published',
      source: 'CODATA 2018/2022, exact since the 2019 SI revision',
      inputs: {},
      expected: 8.314462618,
      tolerance: relative(1e-9),
    },
  ],
};

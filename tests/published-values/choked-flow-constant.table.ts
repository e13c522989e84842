import { airGasConstant } from '@ebbline/shared/fluid-properties/air';
import { chokedFlowConstant } from '@ebbline/shared/hydraulics/air-through-opening';
import { absolute, type PublishedTable } from './published-table';

export const chokedFlowConstantTable: PublishedTable = {
  title: 'constant of choked air flow, s √K/m',
  subject: { equation: chokedFlowConstant },
  evaluate: (equation, { k = Number.NaN }) => equation(k, airGasConstant),
  rows: [
    {
      id: 'choke-const',
      status: 'published',
      source: 'NACA Report 1135; White, Fluid Mechanics eq. 9.47 (0.6847 p0 A/sqrt(R T0))',
      inputs: { k: 1.4 },
      expected: 0.04041,
      tolerance: absolute(1e-5),
    },
  ],
};

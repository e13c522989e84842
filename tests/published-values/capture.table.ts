import { absolute, type PublishedTable } from './published-table';

export const captureTable: PublishedTable = {
  title: 'ratio of heat removed to power',
  subject: { point: 'capture' },
  evaluate: (equation, { Q = Number.NaN, P = Number.NaN }) => equation(Q, P),
  rows: [
    {
      id: 'balance ratio',
      source: 'GUM combination of independent inputs (computed)',
      inputs: { Q: 50152.8, P: 52400 },
      expected: 0.95711,
      tolerance: absolute(1e-5),
    },
  ],
};

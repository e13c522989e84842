import { absolute, type PublishedTable } from './published-table';

export const heatBalanceTable: PublishedTable = {
  title: 'significance of the gap between power and heat removed',
  subject: { point: 'heatBalanceSignificance' },
  evaluate: (equation, { Q = Number.NaN, u_Q = Number.NaN, P = Number.NaN, u_P = Number.NaN }) =>
    equation(Q, u_Q, P, u_P),
  rows: [
    {
      id: 'balance z',
      status: 'computed',
      source: 'GUM combination of independent inputs (computed)',
      inputs: { Q: 50152.8, u_Q: 870, P: 52400, u_P: 300 },
      expected: 2.4419,
      tolerance: absolute(0.001),
    },
  ],
};

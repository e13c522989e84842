import { onUnitM } from './on-unit-m';
import { absolute, type PublishedTable } from './published-table';

export const captureTable: PublishedTable = {
  title: 'ratio of heat removed to power',
  subject: { point: 'capture' },
  evaluate: (equation, { Q = Number.NaN, P = Number.NaN }) => equation(Q, P),
  onSite: {
    point: 'capture',
    evaluate: ({ Q = Number.NaN, P = Number.NaN }) => {
      // Heat removed goes with the flow: the flow that makes it Q.
      const flow = Q / onUnitM('heatRemoved', { 'loop.flow': 1 });
      return onUnitM('capture', { 'loop.flow': flow, 'branch.r1.power': 0.4 * P, 'branch.r2.power': 0.6 * P });
    },
  },
  rows: [
    {
      id: 'balance ratio',
      status: 'computed',
      source: 'GUM combination of independent inputs (computed)',
      inputs: { Q: 50152.8, P: 52400 },
      expected: 0.95711,
      tolerance: absolute(1e-5),
    },
  ],
};

import { nodeAtTank, onUnitM } from './on-unit-m';
import { absolute, type PublishedTable } from './published-table';

export const vacuumMarginTable: PublishedTable = {
  title: 'vacuum margin, kPa',
  subject: { point: 'vacuumMargin' },
  evaluate: (equation, { p_amb = Number.NaN, p_max_loop = Number.NaN }) =>
    equation(p_amb * 1000, p_max_loop * 1000) / 1000,
  onSite: {
    point: 'vacuumMargin',
    evaluate: ({ p_amb = Number.NaN, p_max_loop = Number.NaN }) =>
      onUnitM(
        'vacuumMargin',
        { 'ambient.pressure': p_amb * 1000, 'supplyTank.pressure': p_max_loop * 1000 },
        { nodes: nodeAtTank('supply') },
      ) / 1000,
  },
  rows: [
    {
      id: 'vacuum-margin',
      status: 'computed',
      source: 'definition used in this project; ambient = ISO 2533 at 1500 m (computed)',
      inputs: { p_amb: 84.556, p_max_loop: 71.2 },
      expected: 13.356,
      tolerance: absolute(1e-6),
    },
  ],
};

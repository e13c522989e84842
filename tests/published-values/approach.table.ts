import { onUnitM } from './on-unit-m';
import { relative, type PublishedTable } from './published-table';

export const approachTable: PublishedTable = {
  title: 'approach, K, of a liquid-to-liquid exchanger in counterflow',
  subject: { point: 'approach' },
  evaluate: (equation, { T_TCS_supply = Number.NaN, T_FWS_supply = Number.NaN }) =>
    equation(T_TCS_supply, T_FWS_supply),
  onSite: {
    point: 'approach',
    evaluate: ({ T_TCS_supply = Number.NaN, T_FWS_supply = Number.NaN }) =>
      onUnitM('approach', { 'supply.temperature': T_TCS_supply, 'facility.supply.temperature': T_FWS_supply }),
  },
  rows: [
    {
      id: 'hx-ww approach',
      status: 'published',
      source:
        'Bergman, Lavine, Incropera, DeWitt, Fundamentals of Heat and Mass Transfer (7th ed.) Table 11.3 (computed)',
      inputs: { T_TCS_supply: 34.192, T_FWS_supply: 30 },
      expected: 4.192,
      tolerance: relative(2e-5),
    },
  ],
};

import { absolute, type PublishedTable } from './published-table';

export const boilingMarginTable: PublishedTable = {
  title: 'boiling margin, kPa, at p kPa and t °C',
  subject: { point: 'boilingMargin' },
  evaluate: (equation, { p_min = Number.NaN, t = Number.NaN }) => equation(p_min * 1000, t) / 1000,
  rows: [
    {
      id: 'boiling-margin margin',
      source: 'IAPWS R7-97 region 4',
      inputs: { p_min: 22.0, t: 50 },
      expected: 9.649,
      tolerance: absolute(0.001),
    },
  ],
};

import { suctionThroughput } from '@ebbline/shared/hydraulics/vacuum-suction';
import { absolute, type PublishedTable } from './published-table';

/** Volume that a positive-displacement pump takes in a second: f·V_rev, V_rev = a₁/f·√[(p_out − p_in)/p_out] + a₀ (40 CFR 1065.640). */
const suction = ({ a1 = 0, a0 = 0, f = 0, p_out = 0, p_in = 0 }: Readonly<Record<string, number>>): number =>
  f * ((a1 / f) * Math.sqrt((p_out - p_in) / p_out) + a0);

export const suctionThroughputTable: PublishedTable = {
  title: 'gas that a pump carries, mol/s, by its suction at the inlet’s pressure',
  subject: { equation: suctionThroughput },
  evaluate: (equation, inputs) => {
    const { p_in = Number.NaN, T_in = Number.NaN } = inputs;
    return equation(suction(inputs), p_in * 1000, 0) / (8.314472 * T_in);
  },
  rows: [
    {
      id: 'pdp-cfr',
      status: 'published',
      source: '40 CFR 1065.642(a) worked example (intermediate rounding in the original)',
      inputs: { a1: 0.8405, a0: 0.056, f: 12.58, p_out: 99.95, p_in: 98.575, T_in: 323.5 },
      expected: 29.428,
      tolerance: absolute(0.005),
    },
  ],
};

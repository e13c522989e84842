import { heatRateUncertainty } from '@ebbline/shared/heat/heat-rate';
import { absolute, type PublishedTable } from './published-table';

export const heatUncertaintyTable: PublishedTable = {
  title: 'standard uncertainty of heat removed, W (or as a share of it)',
  subject: { equation: heatRateUncertainty },
  evaluate: (
    equation,
    {
      m = Number.NaN,
      u_m = Number.NaN,
      cp = Number.NaN,
      u_cp = Number.NaN,
      t_supply = Number.NaN,
      t_return = Number.NaN,
      u_t = Number.NaN,
      r = 0,
      asShare = 0,
    },
  ) => {
    const u = equation(m, u_m, cp, u_cp, t_return - t_supply, u_t, u_t, r);
    return asShare === 1 ? u / (m * cp * (t_return - t_supply)) : u;
  },
  rows: [
    {
      id: 'heat-u-10K u(Q)',
      status: 'computed',
      source: 'JCGM 100:2008 eq. (10)/(12) applied to Q = m cp dT (computed)',
      inputs: { m: 1.2, cp: 4179.4, t_supply: 35, t_return: 45, u_m: 0.012, u_cp: 4.0, u_t: 0.1 },
      expected: 870.0,
      tolerance: absolute(0.5),
    },
    {
      id: 'heat-u-2K u(Q)/Q',
      status: 'computed',
      source: 'JCGM 100:2008 eq. (10) (computed)',
      inputs: { m: 1.2, cp: 4179.4, t_supply: 35, t_return: 37, u_m: 0.012, u_cp: 4.0, u_t: 0.1, asShare: 1 },
      expected: 0.07142,
      tolerance: absolute(2e-5),
    },
    {
      id: 'heat-u-corr',
      status: 'computed',
      source: 'JCGM 100:2008 eq. (13)/(16) (computed)',
      inputs: { m: 1.2, cp: 4179.4, t_supply: 35, t_return: 45, u_m: 0.012, u_cp: 4.0, u_t: 0.1, r: 0.8 },
      expected: 595.4,
      tolerance: absolute(0.6),
    },
  ],
};

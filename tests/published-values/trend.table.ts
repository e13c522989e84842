import { mannKendallS, mannKendallVariance, mannKendallZ } from '@ebbline/shared/statistics/mann-kendall';
import { theilSen } from '@ebbline/shared/statistics/theil-sen';
import { timeToLimit } from '@ebbline/shared/statistics/time-to-limit';
import { absolute, type PublishedTable } from './published-table';

const x = [1, 2, 3, 4, 10, 12, 18];
const y = [9, 15, 19, 20, 45, 55, 78];
const sen = 'Sen 1968, J. Amer. Stat. Assoc. 63:1379–1389, example of seven points';
const kendall = 'Kendall; Gilbert 1987 ch. 16, for the same seven points';

/** z of the 93 % interval: Φ(1.812) = 0.965. */
const z93 = 1.812;

export const theilSenTable: PublishedTable = {
  title: 'Theil–Sen slope and its 93 % interval',
  subject: { equation: theilSen as unknown as (...inputs: never[]) => number },
  evaluate: (_, { which = 0 }) => {
    const { slope, lower, upper } = theilSen(x, y, x.length, z93);
    return [slope, lower, upper][which] ?? Number.NaN;
  },
  rows: [
    { id: 'theil-sen slope', source: sen, inputs: { which: 0 }, expected: 4, tolerance: absolute(1e-9) },
    {
      id: 'theil-sen lower',
      source: `${sen} (its interval as the R package deming corrects it)`,
      inputs: { which: 1 },
      expected: 3.7142857142857144,
      tolerance: absolute(1e-9),
    },
    {
      id: 'theil-sen upper',
      source: `${sen} (its interval as the R package deming corrects it)`,
      inputs: { which: 2 },
      expected: 4.375,
      tolerance: absolute(1e-9),
    },
  ],
};

export const mannKendallTable: PublishedTable = {
  title: 'Mann–Kendall S, its variance and z',
  subject: { equation: mannKendallZ as unknown as (...inputs: never[]) => number },
  evaluate: (_, { which = 0 }) =>
    [mannKendallS(y, y.length), mannKendallVariance(y.length), mannKendallZ(y, y.length)][which] ?? Number.NaN,
  rows: [
    { id: 'mann-kendall S', source: kendall, inputs: { which: 0 }, expected: 21, tolerance: absolute(1e-9) },
    { id: 'mann-kendall var', source: kendall, inputs: { which: 1 }, expected: 44.3333, tolerance: absolute(1e-3) },
    { id: 'mann-kendall z', source: kendall, inputs: { which: 2 }, expected: 3.00375, tolerance: absolute(1e-4) },
  ],
};

export const timeToLimitTable: PublishedTable = {
  title: 'time to a limit by a straight line, min',
  subject: { equation: timeToLimit },
  evaluate: (_, { slope = 0, now = 0, limit = 0 }) => timeToLimit(now, limit, slope, 'above'),
  rows: [
    {
      id: 'ttl-trend',
      source: 'definition (trend extrapolation; computed)',
      inputs: { slope: 0.015, now: 43.2, limit: 45 },
      expected: 120,
      tolerance: absolute(1e-9),
    },
  ],
};

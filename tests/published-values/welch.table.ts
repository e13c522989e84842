import { welchTest } from '@ebbline/shared/statistics/welch';
import { absolute, type PublishedTable } from './published-table';

export const welchTable: PublishedTable = {
  title: 't of two means with unequal variances, and its degrees of freedom',
  subject: { equation: welchTest as unknown as (...inputs: never[]) => number },
  evaluate: (_, { which = 0 }) => {
    const { t, degrees } = welchTest(
      { mean: 1205.3, standardDeviation: 9.399, count: 11 },
      { mean: 1123.8, standardDeviation: 10.583, count: 7 },
    );
    return [t, degrees][which] ?? Number.NaN;
  },
  rows: [
    {
      id: 'cfr-welch t',
      status: 'published',
      source: '40 CFR 1065.602(f)(1), worked example',
      inputs: { which: 0 },
      expected: 16.63,
      tolerance: absolute(0.005),
    },
    {
      id: 'cfr-welch nu',
      status: 'published',
      source: '40 CFR 1065.602(f)(1), worked example',
      inputs: { which: 1 },
      expected: 11.76,
      tolerance: absolute(0.005),
    },
  ],
};

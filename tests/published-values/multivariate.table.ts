import { addToMoments } from '@ebbline/shared/statistics/co-moments';
import { fisherProbability } from '@ebbline/shared/statistics/distributions';
import { hotellingLimit, hotellingMeanLimit, hotellingT2 } from '@ebbline/shared/statistics/hotelling';
import {
  componentDistances,
  jacksonExponent,
  speLimit,
  type ComponentDistances,
} from '@ebbline/shared/statistics/principal-components';
import { chiSquareQuantile } from '@ebbline/shared/statistics/distributions';
import { symmetricEigen } from '@ebbline/shared/statistics/symmetric-eigen';
import { absolute, relative, type PublishedRow, type PublishedTable } from './published-table';

/** Sweat rate, sodium and potassium of 20 people. */
const sweat = [
  [3.7, 48.5, 9.3],
  [5.7, 65.1, 8.0],
  [3.8, 47.2, 10.9],
  [3.2, 53.2, 12.0],
  [3.1, 55.5, 9.7],
  [4.6, 36.1, 7.9],
  [2.4, 24.8, 14.0],
  [7.2, 33.1, 7.6],
  [6.7, 47.4, 8.5],
  [5.4, 54.1, 11.3],
  [3.9, 36.9, 12.7],
  [4.5, 58.8, 12.3],
  [3.5, 27.8, 9.8],
  [4.5, 40.2, 8.4],
  [1.5, 13.5, 10.1],
  [8.5, 56.4, 7.1],
  [4.5, 71.6, 8.2],
  [6.5, 52.8, 10.9],
  [4.1, 44.1, 11.2],
  [5.5, 40.9, 9.4],
];
const smallest = [
  [6, 9],
  [10, 6],
  [8, 3],
];

/** T² of the mean of these rows against what was supposed. */
function t2OfMean(rows: readonly (readonly number[])[], supposed: readonly number[]): number {
  const size = supposed.length;
  const mean = new Float64Array(size);
  const products = new Float64Array(size * size);
  rows.forEach((row, i) => addToMoments(Float64Array.from(row), i + 1, mean, products));
  const covariance = products.map((sum) => sum / (rows.length - 1));
  return rows.length * hotellingT2(mean, supposed, covariance);
}

const book = 'Johnson & Wichern, Applied Multivariate Statistical Analysis, example';
const row = (
  id: string,
  source: string,
  expected: number,
  tolerance: PublishedRow['tolerance'],
  inputs: PublishedRow['inputs'] = {},
  status: PublishedRow['status'] = 'published',
): PublishedRow => ({ id, status, source, inputs, expected, tolerance });

export const sweatTable: PublishedTable = {
  title: 'Hotelling T² of the mean of 20 samples of three signals',
  subject: { equation: hotellingT2 as unknown as (...inputs: never[]) => number },
  evaluate: () => t2OfMean(sweat, [4, 50, 10]),
  rows: [row('t2-sweat T2', `${book} 5.2`, 9.74, absolute(0.005))],
};

export const smallestT2Table: PublishedTable = {
  title: 'Hotelling T² of the mean of three samples of two signals',
  subject: { equation: hotellingT2 as unknown as (...inputs: never[]) => number },
  evaluate: () => t2OfMean(smallest, [9, 5]),
  rows: [row('t2-small', `${book} 5.1 (T² = 7/9)`, 7 / 9, absolute(1e-9), {}, 'from-memory')],
};

export const meanLimitTable: PublishedTable = {
  title: 'limit of T² of a mean, p = 3, n = 20, 10 %',
  subject: { equation: hotellingMeanLimit },
  evaluate: (equation) => equation(3, 20, 0.1),
  rows: [row('t2-sweat critical(0.10)', `${book} 5.2`, 8.17, absolute(0.01))],
};

export const sweatShareTable: PublishedTable = {
  title: 'share of good means with a larger T² than that of the 20 samples: of F on 3 and 17 degrees of freedom',
  subject: { equation: fisherProbability },
  evaluate: (equation) => 1 - equation((17 / (3 * 19)) * t2OfMean(sweat, [4, 50, 10]), 3, 17),
  rows: [row('t2-sweat p', `${book} 5.2`, 0.0649, absolute(1e-4))],
};

export const newPointLimitTable: PublishedTable = {
  title: 'limit of T² of new points',
  subject: { equation: hotellingLimit },
  evaluate: (equation, { p = 0, n = 0, alpha = 0 }) => equation(p, n, alpha),
  rows: [
    row(
      't2-ucl',
      'Montgomery, Introduction to Statistical Quality Control, eq. 11.20',
      13.487902314577838,
      relative(1e-6),
      { p: 3, n: 50, alpha: 0.01 },
    ),
  ],
};

const twoSignals = symmetricEigen(Float64Array.of(1, 0.8, 0.8, 1), 2);
const distances = (x: number, y: number): ComponentDistances => componentDistances([x, y], twoSignals, 1);
const jackson = 'Jackson & Mudholkar 1979, Technometrics 21; worked out by hand for two signals of correlation 0.8';
const near = absolute(2e-4);

export const componentsTable: PublishedTable = {
  title: 'T² and SPE of two points, largest eigenvalue',
  subject: { equation: componentDistances as unknown as (...inputs: never[]) => number },
  evaluate: (_, { which = 0 }) =>
    [
      twoSignals.values[0] ?? Number.NaN,
      distances(1, -1).t2,
      distances(1, -1).spe,
      distances(2, 2).t2,
      distances(2, 2).spe,
    ][which] ?? Number.NaN,
  rows: (
    [
      ['lambda1', 1.8],
      ['T2_a', 0],
      ['SPE_a', 2],
      ['T2_b', 4.44444],
      ['SPE_b', 0],
    ] as const
  ).map(([id, expected], which) => row(`pca-spe ${id}`, jackson, expected, near, { which }, 'computed')),
};

export const speLimitTable: PublishedTable = {
  title: 'limit of SPE that 5 % of good points pass',
  subject: { equation: speLimit as unknown as (...inputs: never[]) => number },
  evaluate: () => speLimit(twoSignals.values, 1, 0.05),
  rows: [row('pca-spe Q_95', jackson, 0.7494, near, {}, 'computed')],
};

export const jacksonExponentTable: PublishedTable = {
  title: 'exponent h₀ of that limit, one eigenvalue of 0.2 left over',
  subject: { equation: jacksonExponent },
  evaluate: (equation) => equation(0.2, 0.2 ** 2, 0.2 ** 3),
  rows: [row('pca-spe h0', jackson, 0.333333, near, {}, 'computed')],
};

export const exactSpeTable: PublishedTable = {
  title: 'exact limit of SPE where one component is left over: λ₂ χ²',
  subject: { equation: chiSquareQuantile },
  evaluate: (equation) => 0.2 * equation(0.95, 1),
  rows: [row('pca-spe exact', 'Box 1954, Annals of Mathematical Statistics 25', 0.76829, near, {}, 'computed')],
};

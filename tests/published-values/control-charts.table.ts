import { cusumAbove, cusumBelow } from '@ebbline/shared/statistics/cusum';
import { ewma, ewmaHalfWidth } from '@ebbline/shared/statistics/ewma';
import { montgomeryData } from './montgomery-data';
import { absolute, type PublishedRow, type PublishedTable } from './published-table';

const nistGroups = [
  324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15, 328.325,
  327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
];
const nistMeans = [
  52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6,
  52.1,
];
const montgomery = 'Montgomery, Introduction to Statistical Quality Control, example';
const nist = 'NIST/SEMATECH e-Handbook of Statistical Methods';

type Step = (...inputs: number[]) => number;
/** Value of a chart at a sample, counted from 1. */
const chart = (
  data: readonly number[],
  at: number,
  start: number,
  step: (before: number, x: number) => number,
): number => data.slice(0, at).reduce(step, start);
const montgomeryCusum = (equation: Step, { i = 0 }: PublishedRow['inputs']): number =>
  chart(montgomeryData, i, 0, (before, x) => equation(before, x, 10, 0.5));
const nistCusum = (equation: Step, { i = 0 }: PublishedRow['inputs']): number =>
  chart(nistGroups, i, 0, (before, x) => equation(before, x, 325, 0.3175));

const rowsAt = (
  id: string,
  source: string,
  tolerance: number,
  values: readonly (readonly [i: number, expected: number])[],
): readonly PublishedRow[] =>
  values.map(([i, expected]) => ({
    id: `${id}(${i})`,
    status: 'published',
    source,
    inputs: { i },
    expected,
    tolerance: absolute(tolerance),
  }));
const series = (values: readonly number[]): readonly (readonly [number, number])[] => values.map((v, i) => [i + 1, v]);

export const montgomeryAboveTable: PublishedTable = {
  title: 'upper tabular CUSUM of 30 samples, μ₀ = 10, K = 0.5',
  subject: { equation: cusumAbove },
  evaluate: montgomeryCusum,
  rows: rowsAt(
    'cusum-montgomery C+',
    `${montgomery} 9.1, table 9.2`,
    0.006,
    series([
      0, 0, 0, 1.16, 2.82, 2.5, 0.04, 1.0, 0, 0, 0, 0.97, 0.98, 0, 0, 0, 0.12, 0, 0, 0.34, 0.74, 0, 1.79, 2.79, 2.89,
      3.47, 3.35, 4.47, 5.28, 5.3,
    ]),
  ),
};

export const montgomeryBelowTable: PublishedTable = {
  title: 'lower tabular CUSUM of 30 samples, μ₀ = 10, K = 0.5',
  subject: { equation: cusumBelow },
  evaluate: montgomeryCusum,
  rows: rowsAt('cusum-montgomery C-', `${montgomery} 9.1, table 9.2`, 0.006, [[3, 1.77]]),
};

export const nistAboveTable: PublishedTable = {
  title: 'upper tabular CUSUM of 20 groups, μ₀ = 325, k = 0.3175',
  subject: { equation: cusumAbove },
  evaluate: nistCusum,
  rows: rowsAt('cusum-nist Shi', `${nist} 6.3.2.3`, 0.006, [
    [5, 0.03],
    [13, 3.01],
    [14, 4.94],
    [16, 10.63],
    [20, 19.04],
  ]),
};

export const nistBelowTable: PublishedTable = {
  title: 'lower tabular CUSUM of 20 groups, μ₀ = 325, k = 0.3175',
  subject: { equation: cusumBelow },
  evaluate: nistCusum,
  rows: rowsAt('cusum-nist Slo', `${nist} 6.3.2.3`, 0.006, [
    [4, 0.33],
    [8, 0.72],
  ]),
};

export const montgomeryEwmaTable: PublishedTable = {
  title: 'EWMA of the same 30 samples, λ = 0.1',
  subject: { equation: ewma },
  evaluate: (equation, { i = 0 }) => chart(montgomeryData, i, 10, (before, x) => equation(before, x, 0.1)),
  rows: rowsAt('ewma-montgomery z', `${montgomery} 9.2`, 1e-4, [
    [1, 9.945],
    [2, 9.7495],
    [28, 10.5731],
    [29, 10.6468],
  ]),
};

export const montgomeryLimitTable: PublishedTable = {
  title: 'upper limit of that EWMA, L = 2.7, σ = 1',
  subject: { equation: ewmaHalfWidth },
  evaluate: (equation, { i = Infinity }) => 10 + equation(1, 0.1, 2.7, i),
  rows: rowsAt('ewma-montgomery UCL', `${montgomery} 9.2`, 1e-4, [
    [1, 10.27],
    [2, 10.3633],
    [Infinity, 10.6194],
  ]),
};

export const nistEwmaTable: PublishedTable = {
  title: 'EWMA of 20 means, λ = 0.3',
  subject: { equation: ewma },
  evaluate: (equation, { i = 0 }) => chart(nistMeans, i, 50, (before, x) => equation(before, x, 0.3)),
  rows: rowsAt(
    'ewma-nist EWMA',
    `${nist} 6.3.2.4`,
    0.006,
    series([
      50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92,
      50.73, 51.23, 51.94, 51.99,
    ]),
  ),
};

export const nistLimitTable: PublishedTable = {
  title: 'steady limits of that EWMA, σ = 2.0539, L = 3',
  subject: { equation: ewmaHalfWidth },
  evaluate: (equation, { side = 0 }) => 50 + side * equation(2.0539, 0.3, 3),
  rows: (
    [
      ['UCL', 1, 52.5884],
      ['LCL', -1, 47.4116],
    ] as const
  ).map(([id, side, expected]) => ({
    id: `ewma-nist ${id}`,
    status: 'published',
    source: `${nist} 6.3.2.4`,
    inputs: { side },
    expected,
    tolerance: absolute(1e-4),
  })),
};

import { cusumLimit, cusumRunLength, ewmaRunLength, shewhartRunLength } from '@ebbline/shared/statistics/run-length';
import { normalProbability } from '@ebbline/shared/statistics/distributions';
import { absolute, relative, type PublishedRow, type PublishedTable } from './published-table';

const lucasCrosier =
  'Lucas & Crosier 1982, Technometrics 24, table 1; Montgomery, Introduction to Statistical Quality Control';
const cusumRow = (h: number, shift: number, expected: number, tolerance: number): PublishedRow => ({
  id: `cusum-arl-h${h}-${shift}`,
  status: 'published',
  source: lucasCrosier,
  inputs: { h, shift },
  expected,
  tolerance: relative(tolerance),
});

export const cusumRunLengthTable: PublishedTable = {
  title: 'mean run length of a two-sided CUSUM, k = 0.5, samples',
  subject: { equation: cusumRunLength },
  evaluate: (equation, { h = 0, shift = 0 }) => equation(0.5, h, shift),
  rows: [
    cusumRow(4, 0, 168, 0.004),
    cusumRow(4, 0.25, 74.2, 0.004),
    cusumRow(4, 0.5, 26.6, 0.004),
    cusumRow(4, 0.75, 13.3, 0.004),
    cusumRow(4, 1, 8.38, 0.004),
    cusumRow(4, 2, 3.34, 0.004),
    cusumRow(5, 0, 465, 0.005),
    cusumRow(5, 0.25, 139, 0.005),
    cusumRow(5, 0.5, 38, 0.005),
    cusumRow(5, 0.75, 17, 0.005),
    cusumRow(5, 1.5, 5.75, 0.005),
    cusumRow(5, 2, 4.01, 0.005),
  ],
};

export const cusumLimitTable: PublishedTable = {
  title: 'limit of a two-sided CUSUM by its run length on the mean, k = 0.5',
  subject: { equation: cusumLimit },
  evaluate: (equation, { samples = 0 }) => equation(0.5, samples),
  rows: [
    {
      id: 'cusum-arl-h4-0 turned round',
      status: 'published',
      source: `${lucasCrosier}; 168 is printed to three digits, and h moves by 1/e of a share of it`,
      inputs: { samples: 168 },
      expected: 4,
      tolerance: absolute(0.005),
    },
    {
      id: 'cusum-arl-h5-0 turned round',
      status: 'published',
      source: `${lucasCrosier}; 465 is printed to three digits`,
      inputs: { samples: 465 },
      expected: 5,
      tolerance: absolute(0.005),
    },
  ],
};

const lucasSaccucci = 'Lucas & Saccucci 1990, Technometrics 32, table 3';
const ewmaRow = (id: string, source: string, inputs: PublishedRow['inputs'], expected: number): PublishedRow => ({
  id,
  status: 'published',
  source,
  inputs,
  expected,
  tolerance: relative(0.004),
});

export const ewmaRunLengthTable: PublishedTable = {
  title: 'mean run length of a two-sided EWMA with steady limits, samples',
  subject: { equation: ewmaRunLength },
  evaluate: (equation, { lambda = 0, L = 0, shift = 0 }) => equation(lambda, L, shift),
  rows: [
    ewmaRow('ewma-arl-0.5-0.25', lucasSaccucci, { lambda: 0.5, L: 3.071, shift: 0.25 }, 255),
    ewmaRow('ewma-arl-0.5-1', lucasSaccucci, { lambda: 0.5, L: 3.071, shift: 1 }, 17.5),
    {
      ...ewmaRow(
        'ewma-arl-0.25-1',
        'value of a statistics manual of 1999, quoted to ten digits in the manual of the R package spc',
        { lambda: 0.25, L: 3, shift: 1 },
        11.154267016,
      ),
      tolerance: absolute(1e-6),
    },
  ],
};

const nist = 'NIST/SEMATECH e-Handbook of Statistical Methods 6.3.1';

export const shewhartTable: PublishedTable = {
  title: 'mean run length of a chart with limits at so many standard deviations, samples',
  subject: { equation: shewhartRunLength },
  evaluate: (equation, { width = 0 }) => equation(width),
  rows: [
    {
      id: 'shewhart-arl ARL0',
      status: 'published',
      source: nist,
      inputs: { width: 3 },
      expected: 370.4,
      tolerance: absolute(0.05),
    },
  ],
};

export const normalTailsTable: PublishedTable = {
  title: 'share of a normal distribution beyond so many standard deviations',
  subject: { equation: normalProbability },
  evaluate: (equation, { width = 0 }) => 2 * equation(-width),
  rows: [
    {
      id: 'shewhart-arl p',
      status: 'published',
      source: nist,
      inputs: { width: 3 },
      expected: 0.0027,
      tolerance: absolute(1e-5),
    },
  ],
};

import { normalQuantile } from '@ebbline/shared/statistics/distributions';
import { combine2 } from '@ebbline/shared/uncertainty/combine';
import { absolute, type PublishedTable } from './published-table';

const source = 'JCGM 101:2008, 9.2.3 (what a Monte Carlo run makes of it, 3.88, is held in tests/monte-carlo)';
const four = (equation: (a: number, b: number) => number): number => equation(equation(1, 1), equation(1, 1));

export const fourRectanglesTable: PublishedTable = {
  title: 'standard uncertainty of a sum of four inputs of 1',
  subject: { equation: combine2 },
  evaluate: (equation) => four(equation),
  rows: [{ id: 'gums1-9.2.3 u(y)', status: 'published', source, inputs: {}, expected: 2, tolerance: absolute(0.005) }],
};

export const halfWidthTable: PublishedTable = {
  title: 'half width of its 95 % interval by the GUM, normal',
  subject: { equation: normalQuantile },
  evaluate: (equation) => equation(0.975) * four(combine2),
  rows: [
    { id: 'gums1-9.2.3 GUM', status: 'published', source, inputs: {}, expected: 3.92, tolerance: absolute(0.005) },
  ],
};

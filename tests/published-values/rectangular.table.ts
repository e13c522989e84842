import { rectangular } from '@ebbline/shared/uncertainty/combine';
import { absolute, type PublishedTable } from './published-table';

export const rectangularTable: PublishedTable = {
  title: 'standard uncertainty of a rectangular band of half-width a',
  subject: { equation: rectangular },
  evaluate: (equation, { a = Number.NaN }) => equation(a),
  rows: [
    {
      id: 'gum-rect',
      status: 'published',
      source: 'JCGM 100:2008 (GUM) 4.3.7: u^2 = a^2/3',
      inputs: { a: 1 },
      expected: 0.57735,
      tolerance: absolute(1e-5),
    },
  ],
};

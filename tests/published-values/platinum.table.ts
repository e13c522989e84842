import { differenceUncertainty, rectangular } from '@ebbline/shared/uncertainty/combine';
import { platinumTolerance, type PlatinumClass } from '@ebbline/shared/uncertainty/platinum';
import { absolute, type PublishedTable } from './published-table';

const classes: readonly PlatinumClass[] = ['AA', 'A', 'B', 'C'];
const gradeOf = (index: number): PlatinumClass => classes[index] ?? 'C';
const tolerances = [0.1765, 0.24, 0.525, 1.05];

export const platinumTable: PublishedTable = {
  title: 'tolerance of platinum thermometers, K',
  subject: { equation: platinumTolerance },
  evaluate: (_, { grade = 0, t = Number.NaN }) => platinumTolerance(gradeOf(grade), t),
  rows: classes.map((name, grade) => ({
    id: `pt-tol-${name}-45`,
    status: 'published' as const,
    source: 'IEC 60751:2008 and 2022, tolerance classes',
    inputs: { grade, t: 45 },
    expected: tolerances[grade] ?? Number.NaN,
    tolerance: absolute(1e-9),
  })),
};

const tolerance = (t: number): number => platinumTolerance('A', t);

export const platinumPairTable: PublishedTable = {
  title: 'error of the difference of two class A thermometers, K',
  subject: { equation: differenceUncertainty },
  evaluate: (equation, { t1 = Number.NaN, t2 = Number.NaN, worst = 0 }) =>
    worst === 1 ? tolerance(t1) + tolerance(t2) : equation(rectangular(tolerance(t1)), rectangular(tolerance(t2))),
  rows: [
    {
      id: 'pt-pair-dT10-A worst',
      status: 'computed',
      source: 'IEC 60751 class A, both at their limits (computed)',
      inputs: { t1: 35, t2: 45, worst: 1 },
      expected: 0.46,
      tolerance: absolute(1e-4),
    },
    {
      id: 'pt-pair-dT10-A rss',
      status: 'computed',
      source: 'IEC 60751 class A with JCGM 100:2008 4.3.7, rectangular (computed)',
      inputs: { t1: 35, t2: 45 },
      expected: 0.188,
      tolerance: absolute(1e-4),
    },
  ],
};

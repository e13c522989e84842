import { nitrogenSolubility, oxygenSolubility, releasedAir } from '@ebbline/shared/fluid-properties/dissolved-air';
import { absolute, type PublishedRow, type PublishedTable } from './published-table';

const source = 'Weiss 1970, Deep-Sea Research 17:721–735, table of solubilities at 1 atm, salinity 0';
const rows = (id: string, values: readonly (readonly [t: number, expected: number])[]): PublishedRow[] =>
  values.map(([t, expected]) => ({
    id: `${id}-${t}`,
    status: 'published',
    source,
    inputs: { t },
    expected,
    tolerance: absolute(0.006),
  }));

export const oxygenTable: PublishedTable = {
  title: 'oxygen in water under moist air, mL(STP)/L',
  subject: { equation: oxygenSolubility },
  evaluate: (equation, { t = Number.NaN }) => equation(t),
  rows: rows('weiss-o2', [
    [0, 10.22],
    [10, 7.89],
    [20, 6.35],
    [30, 5.28],
  ]),
};

export const nitrogenTable: PublishedTable = {
  title: 'nitrogen in water under moist air, mL(STP)/L',
  subject: { equation: nitrogenSolubility },
  evaluate: (equation, { t = Number.NaN }) => equation(t),
  rows: rows('weiss-n2', [
    [0, 18.42],
    [10, 14.51],
    [20, 11.9],
    [30, 10.06],
    [40, 8.71],
  ]),
};

export const releasedAirTable: PublishedTable = {
  title: 'air that saturated water gives off, mL(STP)/L',
  subject: { equation: releasedAir },
  evaluate: (equation, { t = 0, p1 = 0, p2 = 0 }) => equation(t, p1 * 1000, p2 * 1000) * 1000,
  rows: [
    {
      id: 'degas-30-101-40',
      status: 'computed',
      source: 'Weiss 1970 + Henry proportionality (computed)',
      inputs: { t: 30, p1: 101.325, p2: 40 },
      expected: 9.69,
      tolerance: absolute(0.02),
    },
  ],
};

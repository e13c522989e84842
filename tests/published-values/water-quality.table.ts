import { waterParameterIds } from '@ebbline/shared/contract/water-parameters';
import { conductivityAt25 } from '@ebbline/shared/fluid-properties/conductivity';
import { molybdateOfMolybdenum } from '@ebbline/shared/fluid-properties/molybdate';
import { electrodeSlope } from '@ebbline/shared/fluid-properties/ph-electrode';
import { celsius } from '@ebbline/shared/units/quantity';
import { dew1 } from '../../backend/src/evaluation/alarm-rules/catalogue/dew-1';
import { defaultWaterBands } from '../../backend/src/evaluation/site/default-water-bands';
import { onRichUnit } from './on-rich-unit';
import { absolute, type PublishedRow, type PublishedTable } from './published-table';

const iupac = 'IUPAC Recommendations 2002, pH: RT·ln 10/F';

export const electrodeSlopeTable: PublishedTable = {
  title: 'slope of a pH electrode, mV',
  subject: { equation: (t: number) => electrodeSlope(celsius(t)) * 1000 },
  evaluate: (equation, { t = NaN }) => equation(t),
  rows: [
    {
      id: 'ph-slope 25',
      status: 'published',
      source: iupac,
      inputs: { t: 25 },
      expected: 59.16,
      tolerance: absolute(0.01),
    },
    {
      id: 'ph-slope 45',
      status: 'published',
      source: iupac,
      inputs: { t: 45 },
      expected: 63.13,
      tolerance: absolute(0.01),
    },
  ],
};

const slopeOf25 = { water: { phSlopeOf25: true }, also: ['water.ph'] };

/** −118.32 mV read as pH 9 with the slope of 25 °C (59.16); at 45 °C (63.13 mV a pH) it is 7 + 118.32 ÷ 63.13 = 8.874. */
export const phTable: PublishedTable = {
  title: 'pH of an electrode whose slope was taken at 25 °C',
  subject: { point: 'ph' },
  evaluate: (equation, { ph = NaN, t = NaN }) => equation(ph, t),
  onSite: {
    point: 'ph',
    evaluate: ({ ph = NaN, t = NaN }) => onRichUnit('ph', { 'water.ph': ph, 'supply.temperature': t }, slopeOf25),
  },
  rows: [
    {
      id: 'ph-slope 9 at 45',
      status: 'computed',
      source: `by hand from the slopes of ${iupac}`,
      inputs: { ph: 9, t: 45 },
      expected: 8.874,
      tolerance: absolute(0.001),
    },
    {
      id: 'ph-slope 7 at 45',
      status: 'computed',
      source: 'an electrode gives 0 mV at pH 7 at any temperature (common practice, no source)',
      inputs: { ph: 7, t: 45 },
      expected: 7,
      tolerance: absolute(1e-9),
    },
  ],
};

export const molybdateTable: PublishedTable = {
  title: 'molybdate counted as Mo → as MoO₄, mg/L',
  subject: { equation: molybdateOfMolybdenum },
  evaluate: (equation, { Mo = NaN }) => equation(Mo),
  rows: [
    {
      id: 'wq-mo-convert',
      status: 'published',
      source: 'molar masses 95.95 and 159.95 g/mol (IUPAC)',
      inputs: { Mo: 40 },
      expected: 66.7,
      tolerance: absolute(0.1),
    },
  ],
};

export const conductivityCoefficientTable: PublishedTable = {
  title: 'default rise of conductivity, %/K',
  subject: { equation: conductivityAt25 },
  evaluate: (equation) => (1 / equation(1, 26) - 1) * 100,
  rows: [
    {
      id: 'cond-tc',
      status: 'from-memory',
      source: 'ISO 7888: 1.9 to 2.2 %/K for dilute salt solutions',
      inputs: {},
      expected: 2,
      tolerance: absolute(0.05),
    },
  ],
};

const ends = ['lowLow', 'low', 'high', 'highHigh'] as const;

const defaultEnd = (parameter: number, end: number): number =>
  defaultWaterBands[waterParameterIds[parameter] ?? 'ph'][ends[end] ?? 'low'] ?? NaN;

type Row = readonly [
  id: string,
  parameter: (typeof waterParameterIds)[number],
  end: (typeof ends)[number],
  expected: number,
  tolerance: number,
  status: PublishedRow['status'],
  source: string,
];

const guidelines = 'ASHRAE Liquid Cooling Guidelines for Datacom Equipment Centers, 2nd ed.';
const mg = 0.001;
const practice = 'water-treatment practice';

const bands: readonly Row[] = [
  ['wq-tcs pH_min', 'ph', 'low', 8, 0.05, 'from-memory', guidelines],
  ['wq-tcs pH_max', 'ph', 'high', 9.5, 0.05, 'from-memory', guidelines],
  ['wq-tcs bacteria', 'bacteria', 'high', 100, 1, 'from-memory', guidelines],
  ['wq-tcs turbidity', 'turbidity', 'high', 20, 0.1, 'from-memory', guidelines],
  ['wq-tcs sulfides', 'sulfide', 'high', 1 * mg, 0.01 * mg, 'from-memory', guidelines],
  ['wq-tcs sulfate', 'sulfate', 'high', 10 * mg, 0.1 * mg, 'from-memory', guidelines],
  ['wq-tcs chloride', 'chloride', 'high', 5 * mg, 0.1 * mg, 'from-memory', guidelines],
  ['wq-tcs hardness', 'hardness', 'high', 20 * mg, 0.1 * mg, 'from-memory', guidelines],
  ['wq-no2 low', 'nitrite', 'low', 200 * mg, 1 * mg, 'common-practice', practice],
  ['wq-no2 high', 'nitrite', 'high', 1200 * mg, 1 * mg, 'common-practice', practice],
  ['wq-azole floor', 'azole', 'lowLow', 5 * mg, 0.1 * mg, 'common-practice', practice],
  ['wq-azole low', 'azole', 'low', 10 * mg, 0.1 * mg, 'common-practice', practice],
  ['wq-azole high', 'azole', 'high', 50 * mg, 0.1 * mg, 'common-practice', practice],
  ['wq-cu act', 'copper', 'high', 0.2 * mg, 0.01 * mg, 'common-practice', practice],
  ['wq-fe', 'iron', 'high', 0.2 * mg, 0.01 * mg, 'common-practice', practice],
  ['wq-pg-glycol low', 'glycol', 'low', 0.23, 0.001, 'common-practice', 'trade practice, PG25'],
  ['wq-pg-glycol high', 'glycol', 'high', 0.27, 0.001, 'common-practice', 'trade practice, PG25'],
];

export const waterBandsTable: PublishedTable = {
  title: 'default bands of the water, SI',
  subject: { equation: defaultEnd },
  evaluate: (equation, { parameter = NaN, end = NaN }) => equation(parameter, end),
  rows: bands.map(([id, parameter, end, expected, tolerance, status, source]) => ({
    id,
    status,
    source,
    inputs: { parameter: waterParameterIds.indexOf(parameter), end: ends.indexOf(end) },
    expected,
    tolerance: absolute(tolerance),
  })),
};

export const dewMarginTable: PublishedTable = {
  title: 'default supply temperature above the dew point of the hall, K',
  subject: { equation: () => dew1.defaults.limit },
  evaluate: (equation) => equation(),
  rows: [
    {
      id: 'dew-margin min',
      status: 'common-practice',
      source: 'trade practice: stay 2 to 3 K above the dew point',
      inputs: {},
      expected: 2,
      tolerance: absolute(0.5),
    },
  ],
};

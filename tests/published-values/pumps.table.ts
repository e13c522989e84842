import { flowAtSpeed, powerAtSpeed, riseAtSpeed } from '@ebbline/shared/hydraulics/pump-affinity';
import { pumpGradeIds, pumpGrades } from '@ebbline/shared/hydraulics/pump-grades';
import { designNotStated } from '../../backend/src/evaluation/site/design-not-stated';
import { onRichUnit } from './on-rich-unit';
import { absolute, relative, type PublishedRow, type PublishedTable } from './published-table';

const g = 9.80665;

export const pumpPowerTable: PublishedTable = {
  title: 'power that a pump gives the water, W',
  subject: { point: 'pumpHydraulicPower' },
  evaluate: (equation, { q_V = 0, dp = 0 }) => equation(q_V / 3600, dp * 1000),
  onSite: {
    point: 'pumpHydraulicPower',
    evaluate: ({ q_V = 0, dp = 0 }) =>
      onRichUnit('pumpHydraulicPower', {
        'transfer.flow': q_V / 3600,
        'pump.inlet.pressure': 34_000,
        'pump.discharge.pressure': 34_000 + dp * 1000,
      }),
  },
  rows: [
    {
      id: 'pump-hyd',
      status: 'computed',
      source: 'ISO 9906:2012 clause 3, ρ g Q H with 1000 kg/m³, 10 m and 9.80665 m/s² (computed)',
      inputs: { q_V: 100, dp: (1000 * g * 10) / 1000 },
      expected: 2724.07,
      tolerance: absolute(0.01),
    },
    {
      id: 'pump-dp P_hyd',
      status: 'computed',
      source: 'ISO 9906:2012 clause 3 (computed)',
      inputs: { q_V: 36, dp: 180 },
      expected: 1800,
      tolerance: absolute(1e-6),
    },
  ],
};

const affinity = (what: string, inputs: PublishedRow['inputs'], expected: number): PublishedRow => ({
  id: `pump-affinity ${what}`,
  status: 'computed',
  source: 'ISO 9906:2012, conversion to another speed (computed)',
  inputs: { ...inputs, n: 0.8 },
  expected,
  tolerance: relative(1e-9),
});

export const flowAtSpeedTable: PublishedTable = {
  title: 'flow at 0.8 of the speed, m³/h',
  subject: { equation: flowAtSpeed },
  evaluate: (equation, { Q1 = 0, n = 0 }) => equation(Q1, n),
  rows: [affinity('Q2', { Q1: 40 }, 32)],
};
export const riseAtSpeedTable: PublishedTable = {
  title: 'head at 0.8 of the speed, m',
  subject: { equation: riseAtSpeed },
  evaluate: (equation, { H1 = 0, n = 0 }) => equation(H1, n),
  rows: [affinity('H2', { H1: 20 }, 12.8)],
};
export const powerAtSpeedTable: PublishedTable = {
  title: 'power at 0.8 of the speed, kW',
  subject: { equation: powerAtSpeed },
  evaluate: (equation, { P1 = 0, n = 0 }) => equation(P1, n),
  rows: [affinity('P2', { P1: 3 }, 1.536)],
};

/** The pump of the row as it was commissioned: 40 m³/h and 20 m at full speed. */
const commissioned = (H1: number, efficiency: number) => ({
  design: {
    ratedFlowM3PerS: 40 / 3600,
    commissioned: {
      ...designNotStated.commissioned,
      pumpEfficiency: efficiency,
      pump: {
        flowM3PerS: 40 / 3600,
        speed: 1,
        risePa: 1000 * g * H1,
        flowHalfWidth: 0,
        headHalfWidth: 0.05,
        efficiencyHalfWidth: 0.05,
      },
    },
  },
});

export const pumpHeadRatioTable: PublishedTable = {
  title: 'head of a sound pump at 0.8 of its speed over what affinity makes of the commissioned one',
  subject: { point: 'pumpHeadRatio' },
  evaluate: (equation, { H1 = 0, H2 = 0, n = 0 }) => equation(H2, H1, n),
  onSite: {
    point: 'pumpHeadRatio',
    evaluate: ({ H1 = 0, H2 = 0, Q2 = 0, n = 0 }) =>
      onRichUnit(
        'pumpHeadRatio',
        {
          'transfer.flow': Q2 / 3600,
          'pump.speed': n,
          'pump.inlet.pressure': 34_000,
          'pump.discharge.pressure': 34_000 + 1000 * g * H2,
        },
        commissioned(H1, 0.5),
      ),
  },
  rows: [affinity('H2 over H1', { H1: 20, H2: 12.8, Q2: 32 }, 1)],
};

/** 32 m³/h × 12.8 m of the row take 1.536 kW: 1116 W ÷ 1536 W, and at full speed 2179 W ÷ 3000 W. Affinity keeps the efficiency. */
export const pumpEfficiencyRatioTable: PublishedTable = {
  title: 'efficiency of a sound pump at 0.8 of its speed over the commissioned one',
  subject: { point: 'pumpEfficiencyRatio' },
  evaluate: (equation, { Q2 = 0, H2 = 0, P2 = 0, efficiency = 0 }) =>
    equation(((Q2 / 3600) * 1000 * g * H2) / (P2 * 1000), efficiency),
  onSite: {
    point: 'pumpEfficiencyRatio',
    evaluate: ({ H2 = 0, Q2 = 0, P2 = 0, n = 0, efficiency = 0 }) =>
      onRichUnit(
        'pumpEfficiencyRatio',
        {
          'transfer.flow': Q2 / 3600,
          'pump.speed': n,
          'pump.power': P2 * 1000,
          'pump.inlet.pressure': 34_000,
          'pump.discharge.pressure': 34_000 + 1000 * g * H2,
        },
        commissioned(20, efficiency),
      ),
  },
  rows: [
    {
      ...affinity(
        'P2, as an efficiency',
        { Q2: 32, H2: 12.8, P2: 1.536, efficiency: ((40 / 3600) * 1000 * g * 20) / 3000 },
        1,
      ),
    },
  ],
};

const figures = ['flow', 'head', 'efficiency'] as const;
const acceptance = (grade: number, figure: number): number => {
  const row = pumpGrades[pumpGradeIds[grade] ?? '1B'];
  return 100 * row[figures[figure] ?? 'flow'];
};
const gradeRows = (
  id: string,
  grade: (typeof pumpGradeIds)[number],
  status: PublishedRow['status'],
  expected: readonly [tQ: number, tH: number, tEta: number],
): readonly PublishedRow[] =>
  expected.map((value, figure) => ({
    id: `${id} ${figures[figure] ?? ''}`,
    status,
    source: 'ISO 9906:2012 table 8 (ISO 9906:1999 table 10 for the grades of 1999)',
    inputs: { grade: pumpGradeIds.indexOf(grade), figure },
    expected: value,
    tolerance: absolute(0.01),
  }));

export const pumpGradeTable: PublishedTable = {
  title: 'what the figures of a graded pump may be off, %',
  subject: { equation: acceptance },
  evaluate: (equation, { grade = 0, figure = 0 }) => equation(grade, figure),
  rows: [
    ...gradeRows('iso9906-1-1999', '1 (1999)', 'published', [4.5, 3, 3]),
    ...gradeRows('iso9906-2-1999', '2 (1999)', 'published', [8, 5, 5]),
    ...gradeRows('iso9906-1B', '1B', 'from-memory', [5, 3, 3]),
    ...gradeRows('iso9906-2B', '2B', 'from-memory', [8, 5, 5]),
    ...gradeRows('iso9906-3B', '3B', 'from-memory', [9, 7, 7]),
  ],
};

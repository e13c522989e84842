import { designNotStated } from '../../backend/src/evaluation/site/design-not-stated';
import { relativeResistance } from '@ebbline/shared/hydraulics/relative-resistance';
import { onRichUnit } from './on-rich-unit';
import { absolute, relative, type PublishedRow, type PublishedTable } from './published-table';

const perHour = (q: number): number => q / 3600;
const clogged: PublishedRow = {
  id: 'resistance ratio',
  status: 'computed',
  source: 'Darcy form, turbulent exponent 2 (computed)',
  inputs: { q_ref: 10, dp_ref: 12, q: 8.5, dp: 15.6 },
  expected: 1.7993,
  tolerance: relative(1e-4),
};

const ofPair: PublishedTable['evaluate'] = (equation, { q_ref = 0, dp_ref = 0, q = 0, dp = 0 }) =>
  equation(dp, dp_ref, q, q_ref, 2);

export const filterResistanceTable: PublishedTable = {
  title: 'filter resistance against clean, of kPa and m³/h',
  subject: { point: 'filterResistance' },
  evaluate: ofPair,
  onSite: {
    point: 'filterResistance',
    evaluate: ({ q_ref = 0, dp_ref = 0, q = 0, dp = 0 }) =>
      onRichUnit(
        'filterResistance',
        { 'transfer.flow': perHour(q), 'filter.pressureDrop': dp * 1000 },
        {
          design: {
            ratedFlowM3PerS: perHour(q_ref),
            commissioned: { ...designNotStated.commissioned, filterLossPa: dp_ref * 1000 },
          },
        },
      ),
  },
  rows: [clogged],
};

/** Both tanks at one height, so that the driving pressure is what their pressures differ by. */
const loopOf = (q_ref: number, dp_ref: number) => ({
  design: {
    ratedFlowM3PerS: perHour(q_ref),
    supplyTankSurfaceM: 1,
    returnInletM: 1,
    commissioned: { ...designNotStated.commissioned, loopLossPa: dp_ref * 1000 },
  },
});
const driven = (dp: number, q: number) => ({
  'separator.pressure': 32_000,
  'supplyTank.pressure': 32_000 + dp * 1000,
  'loop.flow': perHour(q),
});

export const loopResistanceTable: PublishedTable = {
  title: 'loop resistance against commissioned, of kPa and m³/h',
  subject: { point: 'loopResistance' },
  evaluate: ofPair,
  onSite: {
    point: 'loopResistance',
    evaluate: ({ q_ref = 0, dp_ref = 0, q = 0, dp = 0 }) =>
      onRichUnit('loopResistance', driven(dp, q), loopOf(q_ref, dp_ref)),
  },
  rows: [clogged],
};

export const dropAtReferenceFlowTable: PublishedTable = {
  title: 'pressure drop at reference flow, kPa',
  subject: { equation: relativeResistance },
  evaluate: (equation, { q_ref = 0, dp_ref = 0, q = 0, dp = 0 }) => equation(dp, dp_ref, q, q_ref, 2) * dp_ref,
  rows: [{ ...clogged, id: 'resistance dp at reference flow', status: 'computed', expected: 21.592 }],
};

/** Kv: m³/h at 1 bar. A loop commissioned with 10 m³/h at 1 bar moves 5 at a quarter of it. */
const kv: PublishedRow = {
  id: 'kv-def',
  status: 'published',
  source: 'IEC 60534-2-1',
  inputs: { Kv: 10, dp: 0.25 },
  expected: 5,
  tolerance: absolute(1e-6),
};

export const expectedFlowTable: PublishedTable = {
  title: 'flow that a pressure moves, m³/h',
  subject: { point: 'expectedFlow' },
  evaluate: (equation, { Kv = 0, dp = 0 }) => equation(dp, 1, Kv, 2),
  onSite: {
    point: 'expectedFlow',
    evaluate: ({ Kv = 0, dp = 0 }) => onRichUnit('expectedFlow', driven(dp * 100, Kv), loopOf(Kv, 100)) * 3600,
  },
  rows: [kv],
};

export const flowShareTable: PublishedTable = {
  title: 'flow over what it should be, m³/h',
  subject: { point: 'flowShare' },
  evaluate: (equation, { dp = 0 }) => equation(5, 10 * Math.sqrt(dp)),
  onSite: {
    point: 'flowShare',
    evaluate: ({ Kv = 0, dp = 0 }) => onRichUnit('flowShare', driven(dp * 100, 5), loopOf(Kv, 100)),
  },
  rows: [{ ...kv, expected: 1 }],
};

export const pumpEfficiencyTable: PublishedTable = {
  title: 'overall efficiency of a pump',
  subject: { point: 'pumpEfficiency' },
  evaluate: (equation, { q_V = 0, dp = 0, P_el = 0 }) => equation(perHour(q_V), dp * 1000, P_el * 1000),
  onSite: {
    point: 'pumpEfficiency',
    evaluate: ({ q_V = 0, dp = 0, P_el = 0 }) =>
      onRichUnit('pumpEfficiency', {
        'transfer.flow': perHour(q_V),
        'pump.inlet.pressure': 34_000,
        'pump.discharge.pressure': 34_000 + dp * 1000,
        'pump.power': P_el * 1000,
      }),
  },
  rows: [
    {
      id: 'pump-dp eta_gross',
      status: 'computed',
      source: 'ISO 9906:2012 overall efficiency (computed)',
      inputs: { q_V: 36, dp: 180, P_el: 3.1 },
      expected: 0.58065,
      tolerance: absolute(1e-5),
    },
  ],
};

export const timeToEmptyTable: PublishedTable = {
  title: 'stored flow of unit M at 346 L/min, s',
  subject: { point: 'rideThroughFlow' },
  evaluate: (equation, { usable = 0, q = 0 }) => equation(usable, q / 60),
  onSite: { point: 'rideThroughFlow', evaluate: () => onRichUnit('rideThroughFlow', {}) },
  rows: [
    {
      id: 'unit-m-stored-flow',
      status: 'computed',
      source: 'parameter set of unit M, computed by hand: 80 L at 346 L/min; printed as 14 s',
      inputs: { usable: 80, q: 346 },
      expected: 13.87,
      tolerance: absolute(0.01),
    },
  ],
};

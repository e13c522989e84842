import { timeToTemperature } from '@ebbline/shared/heat/time-to-temperature';
import { viscosityOnLoss } from '@ebbline/shared/hydraulics/relative-resistance';
import { fil1 } from '../../backend/src/evaluation/alarm-rules/catalogue/fil-1';
import { onRichUnit } from './on-rich-unit';
import { absolute, relative, type PublishedTable } from './published-table';

export const branchResistanceTable: PublishedTable = {
  title: 'branch resistance against commissioned, of kPa and m³/h',
  subject: { point: 'branch.<id>.resistanceRatio' },
  evaluate: (equation, { q_ref = 0, dp_ref = 0, q = 0, dp = 0 }) => equation(dp, dp_ref, q, q_ref, 2),
  onSite: {
    point: 'branch.<id>.resistanceRatio',
    evaluate: ({ q_ref = 0, dp_ref = 0, q = 0, dp = 0 }) =>
      onRichUnit(
        'branch.r1.resistanceRatio',
        {
          'separator.pressure': 32_000,
          'supplyTank.pressure': 32_000 + dp * 1000,
          'branch.r1.flow': ((43 / 60_000) * q) / q_ref,
        },
        {
          design: { supplyTankSurfaceM: 1, returnInletM: 1 },
          branchParts: { commissioned: { lossPa: dp_ref * 1000, exponent: 2 } },
        },
      ),
  },
  rows: [
    {
      id: 'resistance of a branch',
      status: 'computed',
      source: 'Darcy form, turbulent exponent 2 (computed)',
      inputs: { q_ref: 10, dp_ref: 12, q: 8.5, dp: 15.6 },
      expected: 1.7993,
      tolerance: relative(1e-4),
    },
  ],
};

/** At the same flow a filter that loses twice as much has twice the resistance, which is where FIL-1 stands. */
export const filterChangeTable: PublishedTable = {
  title: 'resistance at which a filter is changed, as the alarm has it',
  subject: { point: 'filterResistance' },
  evaluate: (equation) => equation((fil1.defaults.limit ?? Number.NaN) * 15, 15, 346, 346, 2),
  onSite: {
    point: 'filterResistance',
    evaluate: () => onRichUnit('filterResistance', { 'filter.pressureDrop': (fil1.defaults.limit ?? NaN) * 15_000 }),
  },
  rows: [
    {
      id: 'filter-dp',
      status: 'common-practice',
      source: 'common practice, no source: a change at twice the clean resistance',
      inputs: {},
      expected: 2,
      tolerance: absolute(1e-9),
    },
  ],
};

/** Viscosity falls by 45 % from 20 to 50 °C (1.0016 to 0.5465 mPa s): laminar loss falls with it, turbulent does not. */
export const viscosityTable: PublishedTable = {
  title: 'loss at the same flow in water of 50 °C over that in water of 20 °C',
  subject: { equation: viscosityOnLoss },
  evaluate: (equation, { exponent = 0 }) => equation(0.5465 / 1.0016, exponent),
  rows: [
    {
      id: 'laminar filter',
      status: 'computed',
      source: 'Hagen–Poiseuille (White, Fluid Mechanics, eq. 6.13); viscosities of IAPWS R12-08 (computed)',
      inputs: { exponent: 1 },
      expected: 0.5456,
      tolerance: absolute(1e-4),
    },
    {
      id: 'turbulent filter',
      status: 'computed',
      source: 'Darcy–Weisbach with a constant friction factor (computed)',
      inputs: { exponent: 2 },
      expected: 1,
      tolerance: absolute(1e-9),
    },
  ],
};

const junction = { h: 400, c: 400, rho: 8500, D: 7.06e-4 };

/** A junction as one lump: heat capacity ρ c πD³/6, loss h πD². */
export const junctionTable: PublishedTable = {
  title: 'time of a thermocouple junction from 25 to 199 °C in gas of 200 °C, s',
  subject: { equation: timeToTemperature },
  evaluate: (equation, { h = 0, c = 0, rho = 0, D = 0 }) =>
    equation((rho * c * Math.PI * D ** 3) / 6, 0, 25, 199, h * Math.PI * D * D, 200),
  rows: [
    {
      id: 'inc-5.1 t',
      status: 'from-memory',
      source: 'Bergman, Lavine, Incropera, DeWitt, Fundamentals of Heat and Mass Transfer, 7th ed., example 5.1',
      inputs: junction,
      expected: 5.2,
      tolerance: absolute(0.05),
    },
  ],
};

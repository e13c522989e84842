import { freeAirDensity, freeAirK } from '@ebbline/shared/fluid-properties/air';
import { freeAirOfThroughput } from '@ebbline/shared/hydraulics/free-air';
import { pressureRise } from '@ebbline/shared/hydraulics/pressure-rise';
import { celsius } from '@ebbline/shared/units/quantity';
import { absolute, relative, type PublishedRow, type PublishedTable } from './published-table';

type Numbers = Readonly<Record<string, number>>;
const molar = 8.314472;

/** The worked example of a vacuum-decay leak check: 2 L from 25.3 to 50.6 kPa in 70 s at 293.15 K. */
const decay: Numbers = { V: 2, p1: 25.3, p2: 50.6, dt: 70, T: 293.15 };
const tank: Numbers = { V: 80, p1: 40, p2: 40.75, dt: 600, T: 298.15 };

const rise = (equation: (...inputs: number[]) => number, { V = 0, p1 = 0, p2 = 0, dt = 0 }: Numbers): number =>
  equation(p1 * V, p2 * V, dt);

export const leakRateMolesTable: PublishedTable = {
  title: 'leak rate by two pressures, mol/s',
  subject: { equation: pressureRise },
  evaluate: (equation, inputs) => rise(equation, inputs) / (molar * (inputs['T'] ?? Number.NaN)),
  rows: [
    {
      id: 'leak-cfr',
      status: 'published',
      source: '40 CFR 1065.644 worked example (times 10:56:25 and 10:57:35)',
      inputs: decay,
      expected: 0.0003,
      tolerance: absolute(5e-6),
    },
    {
      id: 'leak-tank n',
      status: 'computed',
      source: 'pressure-rise method, ideal gas (computed)',
      inputs: tank,
      expected: 4.034e-5,
      tolerance: relative(0.001),
    },
  ],
};

const decayRow = (id: string, expected: number, tolerance: number): PublishedRow => ({
  id,
  status: 'published',
  source: 'the two pressures of 40 CFR 1065.644; 1 sccm = 1.68875e-3 Pa m3/s (NIST SP 811: 101325 Pa x 1e-6 m3 / 60 s)',
  inputs: { ...decay, perUnit: id.endsWith('sccm') ? 1.68875e-3 : 0.1 },
  expected,
  tolerance: absolute(tolerance),
});

export const leakRateUnitsTable: PublishedTable = {
  title: 'leak rate by two pressures, as throughput in mbar L/s and sccm',
  subject: { equation: pressureRise },
  evaluate: (equation, inputs) => rise(equation, inputs) / (inputs['perUnit'] ?? Number.NaN),
  rows: [decayRow('leak-pdv Q_mbarL', 7.2286, 0.0001), decayRow('leak-pdv Q_sccm', 428.0, 0.2)],
};

const freeAir = (equation: (...inputs: number[]) => number, inputs: Numbers): number =>
  equation(rise(pressureRise, inputs), celsius((inputs['T'] ?? Number.NaN) - 273.15));

export const leakMassTable: PublishedTable = {
  title: 'leak rate by two pressures, as mass flow of air, kg/s',
  subject: { equation: freeAirOfThroughput },
  evaluate: (equation, inputs) => freeAir(equation, inputs) * freeAirDensity,
  rows: [
    {
      id: 'leak-tank m',
      status: 'computed',
      source: 'pressure-rise method, ideal gas (computed)',
      inputs: tank,
      expected: 1.1685e-6,
      tolerance: relative(0.001),
    },
  ],
};

export const leakStandardLitresTable: PublishedTable = {
  title: 'leak rate by two pressures, L/min at 0 °C and 101.325 kPa',
  subject: { equation: freeAirOfThroughput },
  evaluate: (equation, inputs) => freeAir(equation, inputs) * 60_000 * (273.15 / freeAirK),
  rows: [
    {
      id: 'leak-tank std',
      status: 'computed',
      source: 'pressure-rise method, ideal gas (computed)',
      inputs: tank,
      expected: 0.0543,
      tolerance: relative(0.001),
    },
  ],
};

/** What a dry loop is accepted with: a cubic metre of gas at 20 kPa that rises by less than half a kilopascal in half an hour. */
export const tightLoopTable: PublishedTable = {
  title: 'acceptance of an evacuated dry loop, free L/min',
  subject: { equation: freeAirOfThroughput },
  evaluate: (equation, inputs) => freeAir(equation, inputs) * 60_000,
  rows: [
    {
      id: 'dry loop of 1 m³, 0.5 kPa in 30 min',
      status: 'common-practice',
      source: 'common practice, no source; 500 Pa · 1 m³ / 1800 s at 20 °C as free air, by hand',
      inputs: { V: 1000, p1: 20, p2: 20.5, dt: 1800, T: 293.15 },
      expected: 0.16,
      tolerance: absolute(0.005),
    },
  ],
};

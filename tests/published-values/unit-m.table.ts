import { onUnitM } from './on-unit-m';
import { absolute, relative, type PublishedTable } from './published-table';

const source = 'parameter set of unit M, computed by hand; printed to two or three digits';
const unitM = { p_supply: 74, p_separator: 32, p_v: 9.594, rho: 990.2 };

export const drivingPressureTable: PublishedTable = {
  title: 'driving pressure, kPa',
  subject: { point: 'drivingPressure' },
  evaluate: (equation, { p_supply = Number.NaN, p_separator = Number.NaN, rho = Number.NaN }) =>
    equation(p_supply * 1000, 1, p_separator * 1000, 1.2, rho) / 1000,
  onSite: { point: 'drivingPressure', evaluate: () => onUnitM('drivingPressure', {}) / 1000 },
  rows: [
    { id: 'unit-m-driving', status: 'computed', source, inputs: unitM, expected: 40.1, tolerance: relative(0.01) },
  ],
};

/** NPSH available 2.5 m against the limit of 2.1 m, at 9.71 kPa/m. */
export const lowerWallTable: PublishedTable = {
  title: 'margin of NPSH as pressure, kPa',
  subject: { point: 'lowerWallMargin' },
  evaluate: (equation, { available = Number.NaN, limit = Number.NaN, rho = Number.NaN }) =>
    equation(available, limit, rho) / 1000,
  rows: [
    {
      id: 'unit-m-npsh',
      status: 'computed',
      source,
      inputs: { available: 2.5, limit: 2.1, rho: 990.2 },
      expected: 0.4 * 9.71,
      tolerance: relative(0.01),
    },
  ],
};

export const vacuumMarginWorstTable: PublishedTable = {
  title: 'vacuum margin of the stopped loop, kPa',
  subject: { point: 'vacuumMarginWorst' },
  evaluate: (equation, { p_amb = Number.NaN, p_low = Number.NaN }) => equation(p_amb * 1000, p_low * 1000) / 1000,
  onSite: { point: 'vacuumMarginWorst', evaluate: () => onUnitM('vacuumMarginWorst', {}) / 1000 },
  rows: [
    {
      id: 'unit-m-margin-stopped',
      status: 'computed',
      source,
      inputs: { p_amb: 101.3, p_low: 88.6 },
      expected: 12.7,
      tolerance: absolute(0.05),
    },
  ],
};

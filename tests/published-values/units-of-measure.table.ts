import { freeAirK } from '@ebbline/shared/fluid-properties/air';
import { oneUnitInSi } from './one-unit-in-si';
import { relative, type PublishedTable } from './published-table';

export const unitsOfMeasureTable: PublishedTable = {
  title: 'one unit of measure, Pa (a gas flow in cm³/min at 0 °C: as throughput, Pa m³/s)',
  subject: { equation: oneUnitInSi },
  evaluate: (equation, { unit = Number.NaN }) =>
    unit === 2 ? (equation(unit) / 1000) * 101_325 * (273.15 / freeAirK) : equation(unit),
  rows: [
    {
      id: 'const-psi',
      status: 'published',
      source: 'NIST SP 811 App. B',
      inputs: { unit: 0 },
      expected: 6894.757,
      tolerance: relative(1e-7),
    },
    {
      id: 'const-mmHg',
      status: 'published',
      source: 'NIST SP 811 App. B',
      inputs: { unit: 1 },
      expected: 133.3224,
      tolerance: relative(1e-6),
    },
    {
      id: 'sccm',
      status: 'published',
      source: 'NIST SP 811 style conversion (101325 Pa x 1e-6 m3 / 60 s)',
      inputs: { unit: 2 },
      expected: 0.00168875,
      tolerance: relative(1e-5),
    },
  ],
};

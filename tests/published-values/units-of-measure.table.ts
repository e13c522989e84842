import { toSi, unitOfMeasure } from '@ebbline/shared/units/units-of-measure';
import { freeAirK } from '@ebbline/shared/fluid-properties/air';
import { relative, type PublishedTable } from './published-table';

const units = ['psi', 'mmHg', 'L/min at 0 degC'] as const;

/** `unit`: place in the list above. A throughput at 0 °C follows from the free-air flow of the row: times 101 325 Pa and 273.15/293.15. */
function oneUnitInSi(unit: number): number {
  const id = units[unit];
  const row = id === undefined ? undefined : unitOfMeasure(id, unit === 2 ? 'freeAirFlow' : 'absolutePressure');
  return row === undefined ? Number.NaN : toSi(row, 1);
}

export const unitsOfMeasureTable: PublishedTable = {
  title: 'one unit of measure, Pa (a gas flow in cm³/min at 0 °C: as throughput, Pa m³/s)',
  subject: { equation: oneUnitInSi },
  evaluate: (equation, { unit = Number.NaN }) =>
    unit === 2 ? (equation(unit) / 1000) * 101_325 * (273.15 / freeAirK) : equation(unit),
  rows: [
    {
      id: 'const-psi',
      source: 'NIST SP 811 App. B',
      inputs: { unit: 0 },
      expected: 6894.757,
      tolerance: relative(1e-7),
    },
    {
      id: 'const-mmHg',
      source: 'NIST SP 811 App. B',
      inputs: { unit: 1 },
      expected: 133.3224,
      tolerance: relative(1e-6),
    },
    {
      id: 'sccm',
      source: 'NIST SP 811 style conversion (101325 Pa x 1e-6 m3 / 60 s)',
      inputs: { unit: 2 },
      expected: 0.00168875,
      tolerance: relative(1e-5),
    },
  ],
};

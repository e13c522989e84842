import { toSi, unitOfMeasure } from '@ebbline/shared/units/units-of-measure';

const units = ['psi', 'mmHg', 'L/min at 0 degC'] as const;

/** `unit`: place in the list above. A throughput at 0 °C follows from the free-air flow of the row: times 101 325 Pa and 273.15/293.15. */
export function oneUnitInSi(unit: number): number {
  const id = units[unit];
  const row = id === undefined ? undefined : unitOfMeasure(id, unit === 2 ? 'freeAirFlow' : 'absolutePressure');
  return row === undefined ? Number.NaN : toSi(row, 1);
}

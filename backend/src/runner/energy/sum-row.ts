import { energyQuantities } from '@ebbline/shared/contract/energy';
import type { PeriodSum } from './energy-sums';

/** Numbers in a row: four of each energy, and the heat and power that stand over common time. */
export const rowLength = 4 * energyQuantities.length + 2;

/** What was measured in a period as a row to be kept. What was wanted follows from the calendar, and is not in it. */
export function toRow({ of, commonHeat, commonPower }: PeriodSum): readonly number[] {
  const parts = energyQuantities.flatMap((quantity) => {
    const { energy, uncertainty, uncertainSeconds, measuredSeconds } = of[quantity];
    return [energy, uncertainty, uncertainSeconds, measuredSeconds];
  });
  return [...parts, commonHeat, commonPower];
}

/** Adds row `index` of `rows` to a period. */
export function addRow(period: PeriodSum, rows: Float64Array, index: number): void {
  let at = index * rowLength;
  const next = (): number => rows[at++] ?? Number.NaN;
  for (const quantity of energyQuantities) {
    const sum = period.of[quantity];
    sum.energy += next();
    sum.uncertainty += next();
    sum.uncertainSeconds += next();
    sum.measuredSeconds += next();
  }
  period.commonHeat += next();
  period.commonPower += next();
}

/** Several rows as one. */
export function sumOfRows(rows: Float64Array): Float64Array {
  const sum = new Float64Array(rowLength);
  rows.forEach((value, at) => (sum[at % rowLength] = (sum[at % rowLength] ?? 0) + value));
  return sum;
}

import { massFraction, volumeFraction, type MassFraction, type VolumeFraction } from '../units/quantity';
import type { ValidRange } from './valid-range';

/**
 * ASHRAE Handbook – Fundamentals (2001), table of freezing and boiling points of aqueous propylene glycol: % by mass against % by
 * volume. The row of 25 % was read again; the others are from memory.
 */
const rows: readonly (readonly [mass: number, volume: number])[] = [
  [0, 0],
  [5, 4.8],
  [10, 9.6],
  [15, 14.5],
  [20, 19.4],
  [25, 24.4],
  [30, 29.4],
  [35, 34.4],
  [40, 39.6],
  [45, 44.7],
  [50, 49.9],
  [55, 55],
  [60, 60],
];

export const glycolFractionRange: ValidRange = {
  equation: 'the table of ASHRAE Fundamentals (2001)',
  quantity: 'fraction of propylene glycol',
  unit: '',
  minimum: 0,
  maximum: 0.6,
};

/** The same mixture counted by volume: 25 % by mass is 24.4 % by volume. 0 … 0.6, linear between rows; NaN outside. */
export const glycolVolumeOfMass = (mass: MassFraction): VolumeFraction => volumeFraction(between(mass, 0, 1));

/** The same mixture counted by mass. 0 … 0.6, linear between rows; NaN outside. */
export const glycolMassOfVolume = (volume: VolumeFraction): MassFraction => massFraction(between(volume, 1, 0));

function between(fraction: number, from: 0 | 1, to: 0 | 1): number {
  const percent = fraction * 100;
  const above = rows.findIndex((row) => row[from] >= percent);
  const end = rows[above];
  if (end === undefined || !(percent >= 0)) return Number.NaN;
  const start = rows[above - 1] ?? end;
  const width = end[from] - start[from];
  return (width === 0 ? end[to] : start[to] + ((percent - start[from]) / width) * (end[to] - start[to])) / 100;
}

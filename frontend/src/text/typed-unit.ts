import type { Conversion } from './shown-unit';
import { outOfUnit } from './shown-unit';
import { formatNumber } from './format-number';
import { inUnit } from './shown-unit';
import { unitSystem } from './unit-system';
import { usOfWritten } from './us-units';

export interface TypedUnit extends Conversion {
  /** As it stands beside the field. */
  readonly unit: string;
}

/** In which unit a number is typed that is sent in a metric one. @param written the metric unit, such as `kPa` */
export const typedUnit = (written: string): TypedUnit =>
  (unitSystem() === 'us' ? usOfWritten[written] : undefined) ?? { unit: written, factor: 1 };

/** Digits in which a field shows what is there before anything is typed. */
const digits = 4;

/** What a field shows of a number in the metric unit. */
export const fieldText = (value: number | '', unit: TypedUnit): string =>
  value === '' ? '' : String(unit.factor === 1 ? value : Number(inUnit(value, unit).toPrecision(digits)));

/** What was typed, in the metric unit; empty where it is no number. */
export function readField(text: string, unit: TypedUnit): number | '' {
  const typed = text.trim() === '' ? Number.NaN : Number(text);
  if (!Number.isFinite(typed)) return '';
  return unit.factor === 1 ? typed : Number(outOfUnit(typed, unit).toPrecision(12));
}

/** A bound as a field holds what is typed against it: without the noise of the factor, which would refuse the bound itself. */
export const fieldBound = (value: number, unit: TypedUnit): number =>
  unit.factor === 1 ? value : Number(inUnit(value, unit).toPrecision(12));

/** Decimals that leave a bound at least three digits. */
function decimalsOf(shown: number): number {
  const size = Math.abs(shown);
  if (size === 0) return 0;
  return [0.1, 1, 10, 100].reduce((decimals, step) => (size < step ? decimals : decimals - 1), 4);
}

/** A bound in words, in the unit that is typed; rounded to the inside, so that it is taken where it is typed as it is told. */
export function sayBound(value: number, unit: TypedUnit, end: 'least' | 'most'): string {
  if (unit.factor === 1) return String(value);
  const shown = fieldBound(value, unit);
  const decimals = decimalsOf(shown);
  const nearest = Number(shown.toFixed(decimals));
  const inward = end === 'least' ? 1 : -1;
  const isInside = (nearest - shown) * inward >= 0;
  return formatNumber(isInside ? nearest : nearest + inward * 10 ** -decimals, decimals);
}

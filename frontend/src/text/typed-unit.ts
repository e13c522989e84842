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

/** A bound in words, in the unit that is typed. */
export function sayBound(value: number, unit: TypedUnit): string {
  if (unit.factor === 1) return String(value);
  const shown = inUnit(value, unit);
  return formatNumber(shown, Math.abs(shown) < 10 ? 2 : Math.abs(shown) < 100 ? 1 : 0);
}

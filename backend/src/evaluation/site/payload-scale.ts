import type { PointDefinition, QuantityKind } from '@ebbline/shared/contract/point-table';
import type { PointInFile } from '@ebbline/shared/contract/site-file-points';
import {
  parseQuantity,
  plainUnit,
  splitRange,
  writtenUnit,
  writtenUnitsFor,
} from '@ebbline/shared/contract/site-file-quantity';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { asMolybdenum } from './as-molybdenum';

/** SI = number in the payload × factor + offset. */
export interface PayloadScale {
  readonly unit: string;
  readonly factor: number;
  readonly offset: number;
}

interface ScaleFault {
  readonly key: 'unit' | 'span' | 'density' | 'as';
  readonly message: string;
}

/** Quantities of one unit of measure only: it may be left out. */
const unitless: readonly QuantityKind[] = ['yesNo', 'mode', 'ph'];

function bySpan(file: PointInFile, quantity: QuantityKind): Result<PayloadScale, ScaleFault> {
  const span = splitRange(file.span ?? '');
  if (span === null || span.from === span.to)
    return fail({ key: 'span', message: 'expected two different ends and a unit of measure, such as 0.10 to 0.80 m' });
  if (quantity === 'level') {
    const row = writtenUnit(span.unit, 'length');
    if (row === undefined || plainUnit(file.unit ?? '') !== '%')
      return fail({
        key: 'span',
        message: 'a span goes with a level in %: give `unit: "%"` and the span in m, cm, mm or in',
      });
    return ok({ unit: '%', factor: ((span.to - span.from) * row.factor) / 100, offset: span.from * row.factor });
  }
  if (quantity === 'ratio') {
    const unit = plainUnit(span.unit);
    if (file.unit !== undefined && plainUnit(file.unit) !== unit)
      return fail({
        key: 'span',
        message: `the span is in ${unit} but the payload in ${file.unit}; give both in one unit of measure`,
      });
    return ok({ unit, factor: 1 / (span.to - span.from), offset: -span.from / (span.to - span.from) });
  }
  return fail({ key: 'span', message: 'a span goes with levels and speeds only; take it out (did you mean range?)' });
}

/** How the number in the payload becomes SI: by the table of units of measure, a span, or a density. */
export function payloadScale(file: PointInFile, definition: PointDefinition): Result<PayloadScale, ScaleFault> {
  const { quantity } = definition;
  if (file.span !== undefined) return bySpan(file, quantity);
  if (file.unit === undefined) {
    if (unitless.includes(quantity)) return ok({ unit: '1', factor: 1, offset: 0 });
    return fail({ key: 'unit', message: `is missing; expected one of ${writtenUnitsFor(quantity).join(', ')}` });
  }
  const unit = plainUnit(file.unit);
  if (quantity === 'level' && unit === '%')
    return fail({
      key: 'span',
      message: 'is missing; a level in % needs what 0 % and 100 % mean, such as 0.10 to 0.80 m',
    });
  const asMass = quantity === 'volumeFlow' ? writtenUnit(unit, 'massFlow') : undefined;
  if (asMass !== undefined) {
    const density = parseQuantity(file.density ?? '', 'density');
    if (!density.ok || !(density.value > 0))
      return fail({
        key: 'density',
        message: `is needed for a flow in ${unit}; give it as at the meter, such as 992 kg/m3`,
      });
    return ok({ unit, factor: asMass.factor / density.value, offset: 0 });
  }
  if (file.density !== undefined)
    return fail({ key: 'density', message: 'goes with a flow in kg/s or kg/h only; take it out' });
  const row = writtenUnit(unit, quantity);
  if (row === undefined)
    return fail({
      key: 'unit',
      message: `"${file.unit}" does not fit a ${quantity}; expected one of ${writtenUnitsFor(quantity).join(', ')}`,
    });
  if (definition.id !== 'water.molybdate') return ok({ unit, factor: row.factor, offset: row.offset });
  if (file.as === undefined)
    return fail({
      key: 'as',
      message: 'is missing; say as what it is counted, Mo or MoO4: the numbers differ by 1.67',
    });
  return ok({ unit, factor: asMolybdenum('molybdate', row.factor, file.as), offset: row.offset });
}

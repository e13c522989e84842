import type { QuantityKind } from '@ebbline/shared/contract/point-table';
import { parseQuantity, plainUnit, splitRange, writtenUnit } from '@ebbline/shared/contract/site-file-quantity';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { PayloadScale } from './payload-scale';

/** SI, in the point's own reference. */
export interface PointRange {
  readonly minimum: number;
  readonly maximum: number;
}

/** What nothing real can leave; used where the site file gives no range. SI, °C; pressures absolute. */
const physical: Readonly<Partial<Record<QuantityKind, PointRange>>> = {
  temperature: { minimum: -273.15, maximum: Number.POSITIVE_INFINITY },
  absolutePressure: { minimum: 0, maximum: Number.POSITIVE_INFINITY },
  relativeHumidity: { minimum: 0, maximum: 1.05 },
  yesNo: { minimum: 0, maximum: 1 },
  conductivity: { minimum: 0, maximum: Number.POSITIVE_INFINITY },
  turbidity: { minimum: 0, maximum: Number.POSITIVE_INFINITY },
  volume: { minimum: 0, maximum: Number.POSITIVE_INFINITY },
  bacteria: { minimum: 0, maximum: Number.POSITIVE_INFINITY },
  concentration: { minimum: 0, maximum: Number.POSITIVE_INFINITY },
};

const open: PointRange = { minimum: Number.NEGATIVE_INFINITY, maximum: Number.POSITIVE_INFINITY };

/** Without a stated range, gauge and vacuum numbers are open: their absolute value is judged after conversion. */
export const physicalRange = (quantity: QuantityKind, relativeToAmbient: boolean): PointRange =>
  relativeToAmbient ? open : (physical[quantity] ?? open);

/** `0 to 160 kPa` → SI. */
export function parseRange(text: string, quantity: QuantityKind, scale: PayloadScale): Result<PointRange, string> {
  const range = splitRange(text);
  if (range === null) return fail('expected both ends and the unit of measure, such as 0 to 160 kPa');
  const row = plainUnit(range.unit) === scale.unit ? scale : writtenUnit(range.unit, quantity);
  if (row === undefined)
    return fail(`unit of measure "${range.unit}" does not fit; use that of the point, ${scale.unit}`);
  const [from, to] = [range.from * row.factor + row.offset, range.to * row.factor + row.offset];
  // pH falls as the voltage of its electrode rises.
  const [minimum, maximum] = row.factor < 0 ? [to, from] : [from, to];
  return minimum < maximum ? ok({ minimum, maximum }) : fail('expected the lower end first; swap the ends');
}

const differenceKind = (quantity: QuantityKind): QuantityKind =>
  quantity === 'temperature'
    ? 'temperatureDifference'
    : quantity === 'absolutePressure'
      ? 'pressureDifference'
      : quantity;

/** A difference (an accuracy, a change) in the point's own or any other fitting unit of measure → SI. */
export function parseDifference(text: string, quantity: QuantityKind, scale: PayloadScale): Result<number, string> {
  const own = /^\s*([+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)\s*(\S.*)$/.exec(text);
  if (own !== null && plainUnit(own[2] ?? '') === scale.unit) return ok(Number(own[1]) * Math.abs(scale.factor));
  return parseQuantity(text, differenceKind(quantity));
}

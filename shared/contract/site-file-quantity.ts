import { z } from 'zod';
import { fail, ok, type Result } from '../errors/result';
import { toSi, unitOfMeasure, unitsOfMeasureFor, type UnitOfMeasure } from '../units/units-of-measure';
import type { QuantityKind } from './point-table';

/**
 * Quantities as people write them in the site file: a number, a blank, a unit of measure, in one text
 * (`346 L/min`, `-0.5 m`, `35 °C`). Everything that has a unit of measure is written so.
 */
export type WrittenQuantity = QuantityKind | 'length' | 'area' | 'density' | 'heatCapacity';

const scale = (id: string, factor: number): UnitOfMeasure => ({ id, quantities: [], factor, offset: 0, source: 'SI' });

const siteUnits: Readonly<Partial<Record<WrittenQuantity, readonly UnitOfMeasure[]>>> = {
  duration: [scale('s', 1), scale('ms', 0.001), scale('min', 60), scale('h', 3600), scale('d', 86_400)],
  area: [scale('m2', 1), scale('cm2', 1e-4)],
  density: [scale('kg/m3', 1)],
  heatCapacity: [scale('J/K', 1), scale('kJ/K', 1000)],
};

/** `°C`, `µS/cm`, `m³/h` → the plain ids of the table. */
export const plainUnit = (text: string): string =>
  text
    .trim()
    .replace(/\s+/g, ' ')
    .replace(/^°/, 'deg')
    .replace(/[µμ]/g, 'u')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/^gpm$/, 'gpm(US)');

const tableKind = (kind: WrittenQuantity): QuantityKind | null =>
  kind === 'length'
    ? 'level'
    : kind === 'duration' || kind === 'area' || kind === 'density' || kind === 'heatCapacity'
      ? null
      : kind;

/** The row of the table for a unit of measure as written, or undefined where it does not fit the quantity. */
export function writtenUnit(text: string, kind: WrittenQuantity): UnitOfMeasure | undefined {
  const id = plainUnit(text);
  const table = tableKind(kind);
  return table === null ? siteUnits[kind]?.find((row) => row.id === id) : unitOfMeasure(id, table);
}

export function writtenUnitsFor(kind: WrittenQuantity): readonly string[] {
  const table = tableKind(kind);
  return table === null ? (siteUnits[kind] ?? []).map((row) => row.id) : unitsOfMeasureFor(table);
}

const number = '[+-]?\\d+(?:\\.\\d+)?(?:[eE][+-]?\\d+)?';
const quantityPattern = new RegExp(`^\\s*(${number})\\s*(\\S.*)?$`);

const expectedUnits = (kind: WrittenQuantity): string => writtenUnitsFor(kind).join(', ');

/** Text → number in SI (°C for temperatures, s for durations), or what was expected. */
export function parseQuantity(text: string, kind: WrittenQuantity): Result<number, string> {
  const match = quantityPattern.exec(text);
  if (match === null) return fail(`expected a number and a unit of measure (${expectedUnits(kind)})`);
  const unitText = match[2] ?? '';
  const row = writtenUnit(unitText === '' ? '1' : unitText, kind);
  if (row === undefined)
    return fail(
      `${unitText === '' ? 'no unit of measure' : `unit of measure "${unitText}" does not fit`}; expected one of ${expectedUnits(kind)}`,
    );
  const value = toSi(row, Number(match[1]));
  return Number.isFinite(value) ? ok(value) : fail('expected a finite number');
}

const rangePattern = new RegExp(`^\\s*(${number})\\s*(?:to|\\.\\.)\\s*(${number})\\s*(\\S.*)?$`);

/** `0 to 160 kPa` → both ends as written, and the unit of measure as written ('1' where none). */
export function splitRange(text: string): { readonly from: number; readonly to: number; readonly unit: string } | null {
  const match = rangePattern.exec(text);
  if (match === null) return null;
  return { from: Number(match[1]), to: Number(match[2]), unit: match[3] ?? '1' };
}

/** A key that holds a quantity; refused with the list of units of measure that fit. */
export const quantity = (kind: WrittenQuantity, example: string, description: string) =>
  z
    .string({ error: `expected a number and a unit of measure in one text, such as ${example}` })
    .check((context) => {
      const parsed = parseQuantity(context.value, kind);
      if (!parsed.ok) context.issues.push({ code: 'custom', message: parsed.fault, input: context.value });
    })
    .describe(`${description} Such as \`${example}\`.`);

export const optionalQuantity = (kind: WrittenQuantity, example: string, description: string) =>
  quantity(kind, example, description).optional();

export const optionalLength = (example: string, description: string) =>
  optionalQuantity('length', example, description);

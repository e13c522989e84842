import { writtenUnit, writtenUnitsFor } from '@ebbline/shared/contract/site-file-quantity';
import type { PressureReference } from '@ebbline/shared/units/pressure-reference';
import type { HeardPlace } from './heard-place';
import type { NamedPattern } from './pattern-names';
import { speaksAgainst, speaksFor, type Weighed } from './reasons';
import type { ToldUnit } from './unit-words';
import { usualRanges } from './usual-range.table';
import { conceptsOf, nameOf, wordsOf } from './words-of-name';
import { writtenUnitText } from './written-unit-text';

/** How the numbers of a place would be read. */
export interface ReadAs {
  /** As a site file writes it; null: the quantity has none, or it could not be told. */
  readonly unit: string | null;
  readonly reference: PressureReference | null;
  /** The unit of measure was told, not guessed. */
  readonly told: boolean;
  /** The same of the reference; true where there is none to be told. */
  readonly referenceTold: boolean;
}

type Weighing = (Weighed & { readonly readAs: ReadAs }) | null;

/** Which units of measure are tried first where none is told (common practice, no source). */
const first: readonly string[] = [
  'degC',
  'kPa',
  'L/min',
  '%',
  'kW',
  'cm',
  'uS/cm',
  'mbar',
  'bar',
  'm3/h',
  'W',
  'm',
  'mm',
];
/** How the numbers of no quantity are read. */
export const readAsNothing: ReadAs = { unit: null, reference: null, told: true, referenceTold: true };
const rank = (unit: string): number => (first.includes(unit) ? first.indexOf(unit) : first.length);
const spans: readonly string[] = ['Hz', '1/min', '%'];

/**
 * Whether the unit of measure fits the point, and the numbers lie where the point has them. Null: it can't be, as the unit of
 * measure is of another quantity.
 * @param ambientPa at the site, by which a gauge or vacuum pressure is compared
 */
export function weighValues(
  place: HeardPlace,
  named: NamedPattern,
  told: ToldUnit | null,
  ambientPa: number,
): Weighing {
  const { definition, pattern } = named;
  const { quantity } = definition;
  const range = usualRanges[pattern];
  if (range === undefined) return { score: 0, reasons: [], readAs: readAsNothing };
  const fits = told !== null && fitsQuantity(told.unit, quantity);
  if (told?.sure === true && !fits) return null;
  const units = told !== null && fits ? [told.unit] : quantity === 'ph' ? ['1'] : unitsOf(quantity);
  const unitWeight = told === null || !fits ? 0 : told.sure ? 3 : 1;
  const unitReason =
    unitWeight > 0
      ? [{ speaks: 'for', text: `its unit of measure is told: ${writtenUnitText(told?.unit ?? '')}` } as const]
      : [];
  const { references, sure: referenceTold } = referencesOf(place, named, told);
  const readings = units.flatMap((unit) => references.map((reference) => ({ unit, reference })));
  const found = readings.find((one) => isWithin(place, quantity, one, range, ambientPa));
  const readAs = { unit: null, reference: null, ...(found ?? readings[0]), told: unitWeight === 3, referenceTold };
  // What needs a span is within whatever is said there.
  const bySpan = spans.includes(readAs.unit ?? '') && (quantity === 'level' || readAs.unit !== '%');
  const seen = seenText(place, readAs);
  const weighed = bySpan
    ? { score: 0, reasons: [] }
    : found === undefined
      ? speaksAgainst(-3, `${seen} is hardly what it has`)
      : speaksFor(place.least === 0 && place.most === 0 ? 0.2 : 1, `${seen} is what it has in such a plant`);
  return { score: unitWeight + weighed.score, reasons: [...unitReason, ...weighed.reasons], readAs };
}

function fitsQuantity(unit: string, quantity: NamedPattern['definition']['quantity']): boolean {
  if (writtenUnit(unit, quantity) !== undefined) return true;
  if (quantity === 'level') return unit === '%';
  if (quantity === 'ratio') return spans.includes(unit);
  if (quantity === 'freeAirFlow') return writtenUnit(`free ${unit}`, quantity) !== undefined;
  return quantity === 'volumeFlow' && writtenUnit(unit, 'massFlow') !== undefined;
}

const unitsOf = (quantity: NamedPattern['definition']['quantity']): readonly string[] =>
  [...writtenUnitsFor(quantity)].sort((one, other) => rank(one) - rank(other));

/** What the numbers could be counted from, the likeliest first; `sure`: something tells it, and not that they would fit. */
function referencesOf(
  { topic, path, least, most }: HeardPlace,
  { pattern, definition: { quantity }, wanted }: NamedPattern,
  told: ToldUnit | null,
): { readonly references: readonly (PressureReference | null)[]; readonly sure: boolean } {
  if (quantity !== 'absolutePressure') return { references: [null], sure: true };
  if (told !== null && told.reference !== null) return { references: [told.reference], sure: true };
  // A barometer of another reference would tell nothing.
  if (pattern === 'ambient.pressure') return { references: ['absolute'], sure: true };
  // No absolute pressure is below zero; at a vented loop a vacuum may seem to be.
  if (most < 0) return { references: ['gauge'], sure: true };
  if (least < 0) return { references: ['gauge', 'vacuum'], sure: false };
  const speaksOfVacuum = !wanted.has('vacuum') && conceptsOf(wordsOf(nameOf(topic, path))).has('vacuum');
  return {
    references: speaksOfVacuum ? ['vacuum', 'absolute', 'gauge'] : ['absolute', 'gauge', 'vacuum'],
    sure: false,
  };
}

function isWithin(
  { least, most }: HeardPlace,
  quantity: NamedPattern['definition']['quantity'],
  { unit, reference }: { readonly unit: string; readonly reference: PressureReference | null },
  [low, high]: readonly [number, number],
  ambientPa: number,
): boolean {
  const row = writtenUnit(unit, quantity) ?? writtenUnit(`free ${unit}`, quantity) ?? writtenUnit(unit, 'massFlow');
  if (row === undefined) return false;
  // Of water a litre is about a kilogram.
  const perLitre = writtenUnit(unit, quantity) === undefined && quantity === 'volumeFlow' ? 1000 : 1;
  const ends = [least, most].map((value) => {
    const si = (value * row.factor + row.offset) / perLitre;
    return reference === 'gauge' ? si + ambientPa : reference === 'vacuum' ? ambientPa - si : si;
  });
  return Math.min(...ends) >= low && Math.max(...ends) <= high;
}

function seenText({ least, most }: HeardPlace, { unit, reference, referenceTold }: ReadAs): string {
  const number = (value: number): string => String(Number(value.toPrecision(4)));
  const span = least === most ? number(least) : `${number(least)} to ${number(most)}`;
  return [span, unit === '1' || unit === null ? null : writtenUnitText(unit), referenceTold ? null : 'if', reference]
    .filter((word) => word !== null)
    .join(' ');
}

import { plainUnit } from '@ebbline/shared/contract/site-file-quantity';
import type { PressureReference } from '@ebbline/shared/units/pressure-reference';

/** A unit of measure as a name or a sender tells it, as a site file writes it. */
export interface ToldUnit {
  /** As a site file may write it; `%` of a level and of a ratio alike. */
  readonly unit: string;
  readonly reference: PressureReference | null;
  /** The word that told it. */
  readonly word: string;
  /** A single letter is no more than a hint. */
  readonly sure: boolean;
}

type Row = readonly [word: string, unit: string, reference?: PressureReference];

/** Endings of names and what senders write beside a value (common practice, no source). Compared in lower case. */
const rows: readonly Row[] = [
  ...['degc', 'celsius', '°c', 'deg c', 'cel'].map((word): Row => [word, 'degC']),
  ...['degf', 'fahrenheit', '°f', 'deg f'].map((word): Row => [word, 'degF']),
  ...['kelvin', 'degk'].map((word): Row => [word, 'K']),
  ...['kpa', 'mbar', 'bar', 'psi', 'hpa'].flatMap((unit): Row[] => [
    [unit, unit],
    ...['a', 'abs'].map((ending): Row => [`${unit}${ending}`, unit, 'absolute']),
    ...['g', 'gauge'].map((ending): Row => [`${unit}${ending}`, unit, 'gauge']),
  ]),
  ['kpav', 'kPa', 'vacuum'],
  ['mbarv', 'mbar', 'vacuum'],
  ['pa', 'Pa'],
  ['inhg', 'inHg'],
  ['mmhg', 'mmHg'],
  ['torr', 'mmHg', 'absolute'],
  ...['lpm', 'l/min', 'lmin', 'l min'].map((word): Row => [word, 'L/min']),
  ...['lps', 'l/s', 'l s'].map((word): Row => [word, 'L/s']),
  ...['m3h', 'm3/h', 'm³/h', 'cmh', 'm 3 h'].map((word): Row => [word, 'm3/h']),
  ...['gpm', 'gpm(us)', 'usgpm', 'gal/min'].map((word): Row => [word, 'gpm(US)']),
  ['kg/s', 'kg/s'],
  ['kgs', 'kg/s'],
  ['kg/h', 'kg/h'],
  ...['%', 'pct', 'percent', 'prc', 'perc'].map((word): Row => [word, '%']),
  ...['%rh', 'rh%', '% rh'].map((word): Row => [word, '%']),
  ['mm', 'mm'],
  ['cm', 'cm'],
  ['kw', 'kW'],
  ['watt', 'W'],
  ['watts', 'W'],
  ...['us/cm', 'µs/cm', 'uscm', 'us cm', 'µs cm'].map((word): Row => [word, 'uS/cm']),
  ...['ms/cm', 'mscm'].map((word): Row => [word, 'mS/cm']),
  ['ntu', 'NTU'],
  ...['mg/l', 'mgl', 'mg l'].map((word): Row => [word, 'mg/L']),
  ...['cfu/ml', 'cfuml'].map((word): Row => [word, 'CFU/mL']),
  ['hz', 'Hz'],
  ['rpm', '1/min'],
  ...['liter', 'liters', 'litre', 'litres'].map((word): Row => [word, 'L']),
];
const written: Readonly<Record<string, string>> = { kpa: 'kPa', hpa: 'hPa' };
const byWord = new Map(
  rows.map(([word, unit, reference]) => [word, { unit: written[unit] ?? unit, reference: reference ?? null }] as const),
);
const letters = new Map([
  ['c', 'degC'],
  ['w', 'W'],
  ['m', 'm'],
]);

/**
 * The unit of measure that a place tells: as written beside the value, else by the last words of its name. Null where neither does.
 * @param words of the name, as `wordsOf` gives them
 */
export function toldUnit(unitBeside: string | null, words: readonly string[]): ToldUnit | null {
  const beside = unitBeside === null ? undefined : byWord.get(plain(unitBeside));
  if (unitBeside !== null && beside !== undefined) return { ...beside, word: unitBeside, sure: true };
  for (const count of [3, 2, 1]) {
    if (words.length < count) continue;
    const last = words.slice(-count);
    for (const joiner of ['', ' ']) {
      const word = last.join(joiner);
      const found = byWord.get(word);
      if (found !== undefined) return { ...found, word, sure: true };
    }
  }
  const last = words.at(-1) ?? '';
  const letter = words.length < 2 ? undefined : letters.get(last);
  return letter === undefined ? null : { unit: letter, reference: null, word: last, sure: false };
}

const plain = (text: string): string =>
  plainUnit(text)
    .replace(/^deg([CFK])$/, 'deg$1')
    .toLowerCase();

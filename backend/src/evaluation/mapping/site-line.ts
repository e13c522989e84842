import { pointDefinition } from '@ebbline/shared/contract/point-table';
import type { HeardPlace } from './heard-place';
import type { Proposal } from './rank-place';
import { conceptsOf, nameOf, wordsOf } from './words-of-name';
import { writtenUnitText } from './written-unit-text';
import { meaningsOf, needsWords } from './yes-words';

/** A line of `points` of a site file, and what a person has to put in yet. */
export interface SiteLine {
  readonly text: string;
  /** Keys of the line that can't be told from what arrives. */
  readonly needs: readonly string[];
}

const speeds: readonly string[] = ['Hz', '1/min'];

/** The line by which a place becomes the point. Nothing is put in that was not heard: what is missing is said. */
export function siteLine(place: HeardPlace, { point, readAs }: Pick<Proposal, 'point' | 'readAs'>): SiteLine {
  const { topic, path, form, time, words } = place;
  const quantity = pointDefinition(point)?.quantity;
  const unit =
    quantity === 'freeAirFlow' && readAs.unit?.startsWith('free') === false ? `free ${readAs.unit}` : readAs.unit;
  const byWords = form === 'word' && (quantity === 'mode' || needsWords(words));
  const meanings = quantity === 'yesNo' ? meaningsOf(point, words) : null;
  const hose = quantity === 'volumeFlow' && point === 'loop.flow' ? hoseOf(place) : null;
  const entries: (readonly [string, string] | null)[] = [
    ['topic', quoted(topic)],
    path.length === 0 ? null : ['path', `[${path.map(quoted).join(', ')}]`],
    unit === null || unit === '1' || speeds.includes(unit) ? null : ['unit', quoted(writtenUnitText(unit))],
    readAs.reference === null || !readAs.referenceTold ? null : ['reference', readAs.reference],
    hose === null ? null : ['hose', hose],
    byWords && meanings !== null
      ? [
          'words',
          `{ ${Object.entries(meanings)
            .map(([word, means]) => `${quoted(word)}: ${quoted(means)}`)
            .join(', ')} }`,
        ]
      : null,
    time === null || path.length === 0
      ? null
      : ['time', `{ path: [${time.path.map(quoted).join(', ')}], form: ${time.form} }`],
  ];
  const needs = [
    ...(point === 'loop.flow' && hose === null ? ['hose: on which hose the meter sits'] : []),
    ...(quantity === 'level' && unit === '%' ? ['span: what 0 % and 100 % are, such as 0.10 to 0.80 m'] : []),
    ...(unit !== null && speeds.includes(unit)
      ? [`span: what stands still and full speed are, such as 0 to 50 ${unit}`]
      : []),
    ...(unit === 'kg/s' || unit === 'kg/h' ? ['density: of the water at the meter'] : []),
    ...(point === 'water.molybdate' ? ['as: Mo or MoO4'] : []),
    ...(quantity === 'mode' || (quantity === 'yesNo' && byWords && meanings === null)
      ? ['words: what each word means']
      : []),
    ...(!readAs.told && unit !== null ? ['unit: it is a guess from the values'] : []),
    ...(readAs.referenceTold ? [] : ['reference: absolute, gauge or vacuum, as the sensor tells it']),
    ...(quantity === 'freeAirFlow' ? ['unit: whether the meter counts at 20 °C (free) or at 0 °C'] : []),
  ];
  const text = `${point}: { ${entries.flatMap((entry) => (entry === null ? [] : [`${entry[0]}: ${entry[1]}`])).join(', ')} }`;
  return { text, needs };
}

/** As a YAML scalar (YAML 1.2.2, 7.3): one with control or invisible signs in double quotes, which alone can say them on one line. */
const quoted = (text: string): string =>
  /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u.test(text)
    ? JSON.stringify(text).replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, inHex)
    : `'${text.replaceAll("'", "''")}'`;
const inHex = (sign: string): string => `\\U${(sign.codePointAt(0) ?? 0).toString(16).padStart(8, '0')}`;

function hoseOf({ topic, path }: HeardPlace): 'supply' | 'return' | null {
  const concepts = conceptsOf(wordsOf(nameOf(topic, path)));
  if (concepts.has('supply')) return 'supply';
  return concepts.has('return') ? 'return' : null;
}

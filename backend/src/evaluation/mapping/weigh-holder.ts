import type { PartGroup } from '@ebbline/shared/contract/point-table';
import type { HeardPlace } from './heard-place';
import type { NamedHolder, NamedPart } from './mapped-site';
import { conceptOf } from './name-words';
import { nothing, speaksAgainst, speaksFor, type Weighed } from './reasons';
import { plainCall } from './words-of-name';

/** All that a place may be called by, and numbers by the word before them: `racks/05` → branch 5. */
export interface Calls {
  readonly words: ReadonlySet<string>;
  readonly numbers: ReadonlySet<string>;
}

const byName = 3;
const byNumber = 1;

/** How far a place names this hall or unit. */
export function weighHolder({ words, numbers }: Calls, { id, name }: NamedHolder): Weighed {
  if (words.has(plainCall(id))) return speaksFor(byName, `its topic or key names ${id}`);
  if (words.has(plainCall(name))) return speaksFor(byName, `its topic or key names ${name}`);
  const number = numberOf(id);
  return number !== null && numbers.has(number) ? speaksFor(byNumber, `the number ${number} stands in it`) : nothing;
}

/** The part of the unit that a place names; null where it names none and there are several. */
export function partNamed(
  place: HeardPlace,
  { words }: Calls,
  parts: readonly NamedPart[],
  group: PartGroup,
): (Weighed & { readonly part: NamedPart }) | null {
  const called = parts.find(({ id, name }) => words.has(plainCall(id)) || words.has(plainCall(name)));
  if (called !== undefined) return { ...speaksFor(1.5, `it names ${called.name}`), part: called };
  const number = numbersAfter(group, [...place.topic.split('/'), ...place.path]);
  const counted = number === null ? undefined : parts.find(({ id }) => numberOf(id) === number);
  if (counted !== undefined) return { ...speaksFor(1, `it names number ${number ?? ''}`), part: counted };
  const [only] = parts;
  return parts.length === 1 && only !== undefined && number === null ? { ...nothing, part: only } : null;
}

/** Whether the holder has the point already, and where from. */
export function weighFree({ topicOf, id }: NamedHolder, point: string): Weighed {
  const topic = topicOf.get(point);
  return topic === undefined
    ? speaksFor(0.5, `${id} has no such point yet`)
    : speaksAgainst(-2, `${id} has it already, from ${topic}`);
}

const numberOf = (id: string): string | null => /(\d+)$/.exec(plainCall(id))?.[1] ?? null;

/** The number right behind a word that speaks of the group, in one level or in the next. */
function numbersAfter(group: PartGroup, levels: readonly string[]): string | null {
  const words = levels.flatMap((level) =>
    level
      .replace(/([A-Za-z])(\d)/g, '$1 $2')
      .toLowerCase()
      .split(/[^\p{L}\p{N}]+/u)
      .filter((word) => word !== ''),
  );
  const at = words.findIndex((word, i) => conceptOf(word) === group && /^\d+$/.test(words[i + 1] ?? ''));
  return at < 0 ? null : plainCall(words[at + 1] ?? '');
}

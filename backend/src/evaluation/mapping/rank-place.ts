import { pointDefinition } from '@ebbline/shared/contract/point-table';
import type { HeardPlace, KnownSeries } from './heard-place';
import { groupOf, type MappedSite, type NamedHolder } from './mapped-site';
import { namedPatterns, type NamedPattern } from './pattern-names';
import { together, type Reason, type Weighed } from './reasons';
import { toldUnit } from './unit-words';
import { weighForm } from './weigh-form';
import { partNamed, weighFree, weighHolder, type Calls } from './weigh-holder';
import { weighMovement } from './weigh-movement';
import { weighName } from './weigh-name';
import { readAsNothing, weighValues, type ReadAs } from './weigh-values';
import { callsOf, conceptsOf, nameOf, wordsOf } from './words-of-name';

/** Which point of which hall or unit a place could be. */
export interface Proposal {
  readonly kind: 'hall' | 'unit';
  readonly holder: string;
  readonly point: string;
  readonly title: string;
  /** For comparison with others alone. */
  readonly score: number;
  readonly grade: 'likely' | 'possible';
  readonly reasons: readonly Reason[];
  readonly readAs: ReadAs;
}

export interface RankOptions {
  /** Proposes points of this unit, and of its hall, alone; null: of any. */
  readonly unit: string | null;
  readonly hall: string | null;
}

const proposed = 3;
const patternsLookedAt = 6;
/** Of units that nothing names no more are compared: each costs a look at what moves. */
const unnamedLookedAt = 8;
const leastScore = 3;
const likelyScore = 7;

/** The points that a place could be, the likeliest first; none where nothing speaks for one. */
export function rankPlace(
  place: HeardPlace,
  site: MappedSite,
  known: readonly KnownSeries[],
  options: RankOptions,
): readonly Proposal[] {
  const words = wordsOf(nameOf(place.topic, place.path));
  const told = toldUnit(place.unitBeside, words);
  const concepts = conceptsOf(told === null ? words : words.slice(0, words.length - endingWords(told.word, words)));
  const calls = callsOfPlace(place);
  const patterns = namedPatterns
    .flatMap((named) => {
      const form = weighForm(place, named);
      const values =
        form === null || place.form !== 'number' ? noValues : weighValues(place, named, told, site.ambientPa);
      if (form === null || values === null) return [];
      const name = weighName(concepts, named);
      // Neither its name nor its unit of measure says anything of the point.
      if (name.share === 0 && told?.sure !== true) return [];
      return [{ named, weighed: together([name, form, values]), whole: name.share === 1, readAs: values.readAs }];
    })
    .sort((a, b) => b.weighed.score - a.weighed.score)
    .slice(0, patternsLookedAt);
  return patterns
    .flatMap(({ named, weighed, whole, readAs }) =>
      holdersFor(named, calls, site, options).flatMap(({ holder, ofHolder }) => {
        const part = partFor(place, calls, named, holder);
        if (part === null) return [];
        const { point } = part;
        const all = together([
          weighed,
          ofHolder,
          part,
          weighFree(holder, point),
          weighMovement(place, point, holder, known),
        ]);
        return [toProposal(holder, point, all, readAs, whole && !holder.topicOf.has(point))];
      }),
    )
    .filter(({ score }) => score >= leastScore)
    .sort((a, b) => b.score - a.score)
    .slice(0, proposed);
}

const noValues = { score: 0, reasons: [], readAs: readAsNothing };

function callsOfPlace({ topic, path }: HeardPlace): Calls {
  const words = callsOf(topic, path);
  const numbers = new Set([...words].flatMap((word) => word.match(/\d+/g) ?? []));
  return { words, numbers };
}

/** How many words at the end told the unit of measure: they are no part of the name. */
function endingWords(word: string, words: readonly string[]): number {
  for (const count of [1, 2, 3]) {
    const last = words.slice(-count);
    if (last.join('') === word || last.join(' ') === word) return count < words.length ? count : 0;
  }
  return 0;
}

/** Those that a place names; where it names none, those that have no such point yet. */
function holdersFor(
  { definition, pattern }: NamedPattern,
  calls: Calls,
  site: MappedSite,
  { unit, hall }: RankOptions,
): readonly { readonly holder: NamedHolder; readonly ofHolder: Weighed }[] {
  const only = definition.holder === 'hall' ? hall : unit;
  const all = site.holders
    .filter(({ kind, id }) => kind === definition.holder && (only === null || id === only))
    .map((holder) => ({ holder, ofHolder: weighHolder(calls, holder) }));
  const best = Math.max(0, ...all.map(({ ofHolder }) => ofHolder.score));
  if (best > 0) return all.filter(({ ofHolder }) => ofHolder.score === best);
  return all
    .sort((a, b) => Number(a.holder.topicOf.has(pattern)) - Number(b.holder.topicOf.has(pattern)))
    .slice(0, unnamedLookedAt);
}

function partFor(
  place: HeardPlace,
  calls: Calls,
  { pattern }: NamedPattern,
  holder: NamedHolder,
): (Weighed & { readonly point: string }) | null {
  const group = groupOf(pattern);
  if (group === null) return { score: 0, reasons: [], point: pattern };
  const found = partNamed(place, calls, holder.parts[group] ?? [], group);
  return found === null ? null : { ...found, point: pattern.replace('<id>', found.part.id) };
}

/** @param clear its name says all of the point, and nothing else is the point yet */
const toProposal = (
  holder: NamedHolder,
  point: string,
  { score, reasons }: Weighed,
  readAs: ReadAs,
  clear: boolean,
): Proposal => ({
  kind: holder.kind,
  holder: holder.id,
  point,
  title: pointDefinition(point)?.title ?? point,
  score,
  grade: clear && score >= likelyScore ? 'likely' : 'possible',
  reasons,
  readAs,
});

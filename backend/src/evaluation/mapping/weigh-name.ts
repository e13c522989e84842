import { mayBeSaidOf, type NamedPattern } from './pattern-names';
import { nothing, together, speaksAgainst, speaksFor, type Weighed } from './reasons';

/** What is measured: a name that speaks of one of these speaks of no other. */
const measures = new Set([
  ...[
    'temperature',
    'pressure',
    'drop',
    'flow',
    'level',
    'power',
    'speed',
    'setpoint',
    'running',
    'command',
    'position',
  ],
  ...['available', 'humidity', 'conductivity', 'ph', 'turbidity', 'inhibitor', 'copper', 'bacteria', 'found', 'mode'],
]);

const whole = 5;
const otherThing = -1.2;
const otherMeasure = -4;

/** How far a name speaks of a point, and of what else; `share`: how much of the point it says. @param concepts of the name, as `conceptsOf` gives them */
export function weighName(
  concepts: ReadonlySet<string>,
  { pattern, wanted }: NamedPattern,
): Weighed & { readonly share: number } {
  const said = [...wanted].filter((concept) => concepts.has(concept));
  const others = [...concepts].filter((concept) => !wanted.has(concept) && !mayBeSaidOf(pattern, concept));
  const weight = others.reduce((sum, one) => sum + (measures.has(one) ? otherMeasure : otherThing), 0);
  const share = said.length / wanted.size;
  const weighed = together([
    said.length === 0 ? nothing : speaksFor(whole * share * share, `its name speaks of ${listed(said)}`),
    share > 0 && share < 1
      ? speaksAgainst(0, `its name does not speak of ${listed([...wanted].filter((one) => !concepts.has(one)))}`)
      : nothing,
    others.length === 0 ? nothing : speaksAgainst(weight, `its name speaks of ${listed(others)} as well`),
  ]);
  return { ...weighed, share };
}

export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;

import type { EntryId } from '../entry-ids';
import type { EntryLimits } from '../../site/compiled-site';
import { toSettings } from './to-settings';

/** Two-step pairs: the first step tells earlier. */
const pairs = [
  { first: 'MARGIN-1', second: 'MARGIN-2', order: 'above' },
  { first: 'BOIL-1', second: 'BOIL-2', order: 'above' },
  { first: 'DEW-1', second: 'DEW-2', order: 'above' },
  { first: 'FIL-1', second: 'FIL-2', order: 'below' },
] as const satisfies readonly { first: EntryId; second: EntryId; order: 'above' | 'below' }[];

/** An entry with the other one of its pair; itself alone where it is of none. */
export function stepsOf(id: EntryId): readonly EntryId[] {
  const pair = pairs.find(({ first, second }) => first === id || second === id);
  return pair === undefined ? [id] : [pair.first, pair.second];
}

/** What is wrong with the pair that an entry belongs to, with these limits at a place; null: nothing, or it is of none. */
export function stepsCross(id: EntryId, limits: ReadonlyMap<string, EntryLimits>): string | null {
  const pair = pairs.find(({ first, second }) => first === id || second === id);
  if (pair === undefined) return null;
  const [first, second] = [pair.first, pair.second].map((one) => toSettings(one, limits.get(one)).limit);
  if (first === null || first === undefined || second === null || second === undefined) return null;
  if (pair.order === 'above' ? first > second : first < second) return null;
  return `${pair.first} is the first step of a pair: its limit has to stay ${pair.order} that of ${pair.second}.`;
}

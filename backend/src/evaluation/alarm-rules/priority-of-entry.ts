import type { Priority } from '@ebbline/shared/contract/alarm';
import { unitEntries } from './catalogue/catalogue';
import type { UnitEntry } from './entry';
import { foldsUnder } from './folding';
import { higher, priorityOf } from './priority';

/**
 * The priority that an entry is raised with: that of the grid, but never milder than that of an entry which folds
 * under it. The grid alone gives an absurd result for the two-step pair of the vacuum margin: a margin that is
 * nearly gone (severe, 8 min) is priority 2, a margin that is gone (major while nothing else shows, 3 min) is 3, and the
 * second hides the first, so that the list would grow calmer as the loop gets worse.
 * @param worse whether the signs are there that make the entry worse
 * @param timeToRespondS where the rule has worked it out
 */
export function priorityOfEntry(entry: UnitEntry, worse: boolean, timeToRespondS?: number): Priority | null {
  const rated = worse && entry.worse !== null ? entry.worse : entry;
  const own = priorityOf(rated.severity, timeToRespondS ?? rated.timeToRespondS);
  return unitEntries
    .filter((hidden) => foldsUnder[hidden.id]?.includes(entry.id) ?? false)
    .reduce((most, hidden) => higher(most, priorityOfEntry(hidden, false)), own);
}

/** The most urgent priority that an entry may ever be raised with: with worse signs or no time left, where it has such. */
export function highestPriorityOf(entry: UnitEntry): Priority | null {
  const rated = higher(priorityOfEntry(entry, false), priorityOfEntry(entry, true));
  return entry.computedTime === true ? higher(rated, priorityOfEntry(entry, true, 0)) : rated;
}

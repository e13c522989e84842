import type { TrendsRead } from '../../state/use-trends';
import type { TrendName } from '../../text/trend-link';
import { keyOf } from './trend-address';

/** Why a lane is empty: that nothing was measured is said only once the history has answered for every point. */
export function sayEmptyLane(
  points: readonly TrendName[],
  read: Pick<TrendsRead, 'columns' | 'problems'>,
  busy: boolean,
): string {
  const unread = points.filter((name) => !read.columns.has(keyOf(name)));
  if (busy || unread.some((name) => !read.problems.has(keyOf(name)))) return 'Reading the history…';
  if (unread.length > 0) return 'The history could not be read: what was measured in this period is not known.';
  return 'Nothing measured in this period.';
}

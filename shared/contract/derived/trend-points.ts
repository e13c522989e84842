import type { PointRow } from '../quantity-kind';

/** What comes, by how things have gone. */
export const trendPoints: readonly PointRow[] = [
  ['marginTimeToLimit', 'duration', 's', 'Time until the vacuum margin is at its limit'],
  ['filterTimeToLimit', 'duration', 's', 'Time until the filter is at its limit'],
];

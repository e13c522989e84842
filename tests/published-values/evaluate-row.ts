import { derivedPointsOfHall, derivedPointsOfUnit } from '../../backend/src/evaluation/derive/derived-points';
import type { PublishedRow, PublishedTable } from './published-table';

export const derivedPoints = [...derivedPointsOfHall, ...derivedPointsOfUnit];

/** What a table holds to its rows: the registered equation of its point, or its function. */
export function equationOf({ subject, title }: PublishedTable): (...inputs: number[]) => number {
  if ('equation' in subject) return subject.equation as (...inputs: number[]) => number;
  const point = derivedPoints.find(({ id }) => id === subject.point);
  if (point === undefined) throw new Error(`table "${title}" names ${subject.point}, which the derived table has not`);
  return point.equation as (...inputs: number[]) => number;
}

/** In the row's own unit. */
export const toleranceOf = ({ expected, tolerance: own }: PublishedRow, tolerance = own): number =>
  tolerance.kind === 'relative' ? Math.abs(expected) * tolerance.value : tolerance.value;

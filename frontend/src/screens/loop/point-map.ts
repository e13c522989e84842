import type { Reading } from '@ebbline/shared/contract/reading';

/** The points of a loop by their ids. */
export type PointMap = ReadonlyMap<string, Reading>;

export const toPointMap = (points: readonly Reading[]): PointMap => new Map(points.map((point) => [point.id, point]));

/** True where a point does not apply now: there is nothing to say of it. */
export const doesNotApply = (point: Reading): boolean =>
  point.value === null && point.reasons.includes('notApplicable');

/** True where there is something to say of at least one of these points; a part without any is not drawn. */
export const hasAny = (points: PointMap, ids: readonly string[]): boolean =>
  ids.some((id) => {
    const point = points.get(id);
    return point !== undefined && !doesNotApply(point);
  });

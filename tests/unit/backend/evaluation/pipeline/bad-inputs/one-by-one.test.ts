import { describe, expect, it } from 'vitest';
import type { UnitEntryId } from '../../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import { raisedForReal, type Raised } from './raised-for-real';

const rows = Object.entries(raisedForReal).flatMap(([id, all]) => all.map((raised, i) => [id, i + 1, raised] as const));

/** Points, measured and derived, by whose loss the alarm ended. */
function endedBy(id: UnitEntryId, { make, badS, stepS, points }: Raised): string[] {
  const known = new Set(make().pipeline.site.slots.pointId);
  // The mode says what is judged, and is no reading that something is judged by.
  known.delete('mode');
  for (const point of points ?? []) if (!known.has(point)) throw new Error(`the plant of ${id} has no ${point}`);
  return [...known].filter((point) => {
    if (points?.includes(point) === false) return false;
    return !make().bad(point).run(badS, undefined, stepS).active(id);
  });
}

describe('an alarm whose condition holds', () => {
  it.each(rows)(
    '%s (%i) is there, and is not ended by a point that is lost, for as long as that is',
    (id, _, raised) => {
      expect(raised.make().active(id)).toBe(true);
      expect(endedBy(id as UnitEntryId, raised)).toEqual([]);
    },
    60_000,
  );
});

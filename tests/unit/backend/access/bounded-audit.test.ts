import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { auditBounds, BoundedAudit, otherStations } from '../../../../backend/src/access/bounded-audit';

const minuteMs = 60_000;
const times = <Value>(count: number, make: (i: number) => Value): Value[] =>
  Array.from({ length: count }, (_, i) => make(i));

describe('a bounded audit', () => {
  test('lets five of a station and cause through a minute, and counts the rest', () => {
    const audit = new BoundedAudit();
    const admitted = times(9, () => audit.admits({ station: 'a', cause: 'x' }, 0));
    expect(admitted.filter(Boolean)).toHaveLength(5);
    expect(audit.admits({ station: 'a', cause: 'y' }, 0)).toBe(true);
    expect(audit.admits({ station: 'b', cause: 'x' }, 0)).toBe(true);
    expect(audit.due(minuteMs - 1)).toEqual([]);
    expect(audit.due(minuteMs)).toEqual([{ station: 'a', cause: 'x', left: 4 }]);
    expect(audit.due(2 * minuteMs)).toEqual([]);
    expect(audit.admits({ station: 'a', cause: 'x' }, 2 * minuteMs)).toBe(true);
  });

  test('ends a minute before its time where it is told to', () => {
    const audit = new BoundedAudit();
    times(6, () => audit.admits({ station: 'a', cause: 'x' }, 0));
    expect(audit.due(1, true)).toEqual([{ station: 'a', cause: 'x', left: 1 }]);
  });

  test('stays small however many stations there are', () => {
    const audit = new BoundedAudit();
    times(5000, (i) => audit.admits({ station: `s${i}`, cause: 'x' }, 0));
    const sums = audit.due(minuteMs);
    expect(sums.length).toBeLessThanOrEqual(auditBounds.stations + 1);
    expect(sums.find(({ station }) => station === otherStations)?.left).toBe(5000 - auditBounds.stations);
  });

  test('loses none: what is written and what is counted are all that there were', () => {
    const entry = fc.record({
      station: fc.constantFrom('a', 'b', 'c'),
      cause: fc.constantFrom('x', 'y'),
      afterMs: fc.integer({ min: 0, max: 20_000 }),
    });
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 300 }), (entries) => {
        const audit = new BoundedAudit();
        let [nowMs, written, left] = [0, 0, 0];
        const sum = (atOnce: boolean): void => {
          for (const one of audit.due(nowMs, atOnce)) left += one.left;
        };
        for (const { afterMs, ...counted } of entries) {
          nowMs += afterMs;
          sum(false);
          if (audit.admits(counted, nowMs)) written++;
        }
        sum(true);
        expect(written + left).toBe(entries.length);
      }),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groupNotes } from '../../../../frontend/src/screens/trends/group-notes';
import { packSpans } from '../../../../frontend/src/screens/trends/pack-spans';
import { uncertaintyAt, withNow } from '../../../../frontend/src/screens/trends/uncertainty-at';

describe('the uncertainty at a time', () => {
  const track = { seconds: [0, 10, 20, 30], expanded: [1, 3, null, 5] };
  it('runs straight between two moments of which it is known', () => {
    expect([0, 5, 10].map((at) => uncertaintyAt(track, at))).toEqual([1, 2, 3]);
  });

  it('is not known between two moments of which one is not', () => {
    expect([15, 20, 25].map((at) => uncertaintyAt(track, at))).toEqual([null, null, null]);
  });

  it('holds beyond the ends as far as one moment is from the next', () => {
    expect([-10, -11, 40, 41].map((at) => uncertaintyAt(track, at))).toEqual([1, null, 5, null]);
    expect(uncertaintyAt({ seconds: [], expanded: [] }, 1)).toBeNull();
  });

  it('goes on to what is known of now, and no further back', () => {
    const now = withNow(track, { time: '1970-01-01T00:00:40.000Z', expandedUncertainty: 7 });
    expect(uncertaintyAt(now, 35)).toBe(6);
    expect(withNow(track, { time: '1970-01-01T00:00:30.000Z', expandedUncertainty: 7 })).toBe(track);
  });

  it('of long ago is not told by that of now', () => {
    const now = { time: '1970-01-01T01:00:00.000Z', expandedUncertainty: 7 };
    expect(withNow(track, now)).toBe(track);
    expect(withNow({ seconds: [], expanded: [] }, now).seconds).toEqual([]);
  });
});

describe('alarms in rows over time', () => {
  const at = (from: number | null, to: number | null) => ({ from, to });
  const pack = (given: readonly { from: number | null; to: number | null }[], most = 6) =>
    packSpans(given, 0, 100, 0.05, most);

  it('stand at their times, one under another where they overlap', () => {
    const { placed, rows } = pack([at(10, 30), at(20, 40), at(30, 50)]);
    expect(placed.map(({ left, right, row }) => [left, right, row])).toEqual([
      [0.1, 0.3, 0],
      [0.2, 0.4, 1],
      [0.3, 0.5, 0],
    ]);
    expect(rows).toBe(2);
  });

  it('are wide enough to be hit, at both ends of the axis too', () => {
    const { placed } = pack([at(-50, 0.1), at(50, 50), at(99.9, 120)]);
    expect(placed.map(({ left, right }) => [left, right])).toEqual([
      [0, 0.05],
      [0.5, 0.55],
      [0.95, 1],
    ]);
  });

  it('say where they began before the period, and where they go on', () => {
    const { placed } = pack([at(null, 20), at(30, null), at(-1, 101)]);
    expect(placed.map(({ beganBefore, goesOn }) => [beganBefore, goesOn])).toEqual([
      [true, false],
      [true, true],
      [false, true],
    ]);
  });

  it('leave over what finds no room, the last given first', () => {
    const { leftOver } = pack([at(0, 50), at(10, 60), at(20, 70)], 2);
    expect(leftOver).toEqual([at(20, 70)]);
  });

  it('never cover each other', () => {
    const end = fc.option(fc.integer({ min: -50, max: 150 }), { nil: null });
    fc.assert(
      fc.property(fc.array(fc.record({ from: end, to: end }), { maxLength: 40 }), (given) => {
        const { placed } = pack(given);
        for (const one of placed)
          for (const other of placed)
            if (one !== other && one.row === other.row)
              expect(one.right <= other.left || other.right <= one.left).toBe(true);
      }),
    );
  });
});

describe('notes on a time axis', () => {
  const note = (seconds: number) => ({
    ...{ id: String(seconds), text: 'x', by: 'Ines', station: 's', writtenAt: '', hall: null, unit: null, alarm: null },
    ...{ corrects: null, why: null, correctedBy: null, withdrawn: null },
    about: new Date(seconds * 1000).toISOString(),
  });
  it('are one mark where they stand too near to each other', () => {
    const groups = groupNotes([note(10), note(12), note(50), note(99.9)], 0, 100, 0.05);
    expect(groups.map(({ left, notes }) => [left, notes.length])).toEqual([
      [0.1, 2],
      [0.5, 1],
      [0.95, 1],
    ]);
  });
});

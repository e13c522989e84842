import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildLanes } from '../../../../frontend/src/screens/trends/build-lanes';
import { comparisonsOf, namesOf } from '../../../../frontend/src/screens/trends/compared';
import { heatBeside } from '../../../../frontend/src/screens/trends/heat-beside';
import { captureOf, heatPairs } from '../../../../frontend/src/screens/trends/heat-pairs';
import { groupNotes } from '../../../../frontend/src/screens/trends/group-notes';
import { matchPoints } from '../../../../frontend/src/screens/trends/match-points';
import { movePeriod, spanBetween } from '../../../../frontend/src/screens/trends/move-period';
import { packSpans } from '../../../../frontend/src/screens/trends/pack-spans';
import { viewsFor } from '../../../../frontend/src/screens/trends/prepared-views';
import { uncertaintyAt, withNow } from '../../../../frontend/src/screens/trends/uncertainty-at';
import { extremes, valueAt } from '../../../../frontend/src/screens/trends/value-at';
import { aReading, aSite } from '../../../screens/fixtures/builders';

const history = (point: string, mean: (number | null)[]): HistoryColumns => ({
  unit: 'e7',
  point,
  unit_of_measure: 'W',
  bucketMs: 10_000,
  resolution: 'second',
  start: mean.map((_, index) => new Date(index * 10_000).toISOString()),
  min: mean,
  mean,
  max: mean,
  count: mean.map((value) => (value === null ? 0 : 10)),
});
const name = (point: string, unit = 'e7') => ({ unit, point });
const sources = (points: readonly { unit: string; point: string }[]) => ({
  points,
  site: aSite(),
  columns: new Map([
    ['e7:heatRemoved', history('heatRemoved', [200_000, 210_000])],
    ['e7:chipPower', history('chipPower', [240_000, null])],
  ]),
  live: new Map(),
  newest: new Map([['e7:heatRemoved', aReading('heatRemoved', 210_000, 'W', { expandedUncertainty: 4_000 })]]),
  limits: new Map([
    [
      'e7',
      [
        {
          entry: 'X-1',
          title: 'Heat low',
          point: 'heatRemoved',
          side: 'below' as const,
          limit: 150_000,
          unit_of_measure: 'W',
        },
      ],
    ],
  ]),
  showLimits: true,
  uncertainties: new Map([['e7:heatRemoved', { seconds: [0, 10], expanded: [4_000, 6_000] }]]),
  compared: [],
});

describe('the lanes of a trend', () => {
  it('give one axis to each quantity as it is written, and a letter to each line', () => {
    const lanes = buildLanes(
      sources([name('heatRemoved'), name('vacuumMargin'), name('chipPower'), name('supply.pressure')]),
    );
    expect(lanes.map(({ title, lines }) => [title, lines.map(({ letter }) => letter)])).toEqual([
      ['power, kW', ['a', 'c']],
      ['pressure difference, kPa', ['b']],
      ['pressure, kPa absolute', ['d']],
    ]);
  });

  it('draw values, limits and uncertainty in the unit of the axis', () => {
    const [lane] = buildLanes(sources([name('heatRemoved')]));
    expect(lane?.lines[0]?.mean).toEqual([200, 210]);
    // The middles of the buckets are 5 s and 15 s.
    expect(lane?.lines[0]?.uncertainty).toEqual([5, 6]);
    expect(lane?.limits).toEqual([{ value: 150, name: 'X-1 heat low, below · Heat removed' }]);
  });

  it('leave limits and uncertainty away where they are not asked for', () => {
    const [lane] = buildLanes({ ...sources([name('heatRemoved')]), showLimits: false, uncertainties: null });
    expect(lane?.limits).toEqual([]);
    expect(lane?.lines[0]?.uncertainty).toBeNull();
  });
});

describe('what is held beside the lines', () => {
  const [earlier, other] = comparisonsOf({ earlierSeconds: 86_400, beside: 'e3' }, (id) => id.toUpperCase());
  if (earlier === undefined || other === undefined) throw new Error('two comparisons');

  it('is an earlier period at the times of now, and another unit, each with a mark and a sign of its own', () => {
    const columns = new Map([
      ['e7:heatRemoved', history('heatRemoved', [100_000, 110_000])],
      ['e3:heatRemoved', history('heatRemoved', [50_000, 60_000])],
    ]);
    const compared = [
      { comparison: earlier, columns },
      { comparison: other, columns },
    ];
    const [lane] = buildLanes({ ...sources([name('heatRemoved')]), compared });
    expect(
      lane?.lines.map(({ beside, letter, mark, mean, seconds, unit }) => [unit, letter, mark, beside, mean, seconds]),
    ).toEqual([
      ['e7', 'a', undefined, null, [200, 210], [5, 15]],
      ['e7', 'a′', 'circle', '24\u00a0h earlier', [100, 110], [86_405, 86_415]],
      ['e3', 'a″', 'diamond', 'of E3', [50, 60], [5, 15]],
    ]);
  });

  it('asks for each point once, and not for a unit beside itself', () => {
    const points = [name('heatRemoved'), name('heatRemoved', 'e5'), name('chipPower', 'e3')];
    expect(namesOf(points, other)).toEqual([name('heatRemoved', 'e3')]);
    expect(namesOf(points, earlier)).toEqual(points);
    expect(namesOf(points, undefined)).toEqual([]);
  });

  it('is nothing where nothing is asked for', () => {
    expect(comparisonsOf({ earlierSeconds: null, beside: null }, String)).toEqual([]);
  });
});

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

describe('heat against chip power', () => {
  it('pairs the buckets that have both, of units of which both are drawn', () => {
    const { columns } = sources([]);
    expect(heatPairs([name('heatRemoved'), name('chipPower')], columns)).toEqual([
      { unit: 'e7', pairs: [{ power: 240_000, heat: 200_000 }], buckets: 2, newestSeconds: 10 },
    ]);
    expect(heatPairs([name('heatRemoved')], columns)).toEqual([]);
  });

  it('has a capture of the whole period: all heat over all power, not the mean of shares', () => {
    const pairs = [
      { power: 100, heat: 50 },
      { power: 300, heat: 300 },
    ];
    // 350 of 400.
    expect(captureOf(pairs)).toBe(0.875);
    expect(captureOf([{ power: 0, heat: 0 }])).toBeNull();
  });

  it('stands beside that of an earlier period and of another unit', () => {
    const { columns } = sources([]);
    const [earlier, other] = comparisonsOf({ earlierSeconds: 3600, beside: 'e3' }, String);
    if (earlier === undefined || other === undefined) throw new Error('two comparisons');
    const compared = [
      { comparison: earlier, columns },
      { comparison: other, columns: new Map() },
    ];
    expect(heatBeside('e7', compared)).toEqual([
      { mark: 'circle', words: '60\u00a0min earlier', pairs: [{ power: 240_000, heat: 200_000 }] },
    ]);
  });
});

describe('moving a trend', () => {
  const span = { fromMs: 1_000_000, toMs: 1_400_000 };
  it('goes by a quarter, and never past now', () => {
    expect(movePeriod(span, 'earlier', 1_400_000)).toEqual({ fromMs: 900_000, toMs: 1_300_000 });
    expect(movePeriod(span, 'later', 1_450_000)).toEqual({ fromMs: 1_050_000, toMs: 1_450_000 });
    expect(movePeriod(span, 'later', 9_000_000)).toEqual({ fromMs: 1_100_000, toMs: 1_500_000 });
  });

  it('halves and doubles about the middle', () => {
    expect(movePeriod(span, 'closer', 9_000_000)).toEqual({ fromMs: 1_100_000, toMs: 1_300_000 });
    expect(movePeriod(span, 'wider', 9_000_000)).toEqual({ fromMs: 800_000, toMs: 1_600_000 });
  });

  it('shows a minute at least, whichever way a stretch was drawn', () => {
    expect(spanBetween(1_000_500, 1_000_000, 9_000_000)).toEqual({ fromMs: 970_250, toMs: 1_030_250 });
  });
});

describe('finding a point', () => {
  const all = [
    { point: 'facility.flow', title: 'Facility water flow' },
    { point: 'loop.flow', title: 'Loop flow' },
    { point: 'flowShare', title: 'Flow share' },
  ];
  it('takes parts of words in any order, what begins so first', () => {
    expect(matchPoints(all, 'flow').map(({ point }) => point)).toEqual(['flowShare', 'facility.flow', 'loop.flow']);
    expect(matchPoints(all, 'flow fac').map(({ point }) => point)).toEqual(['facility.flow']);
    expect(matchPoints(all, 'none')).toEqual([]);
  });
});

describe('prepared views', () => {
  it('are offered only where the unit has two of their points, with those it has', () => {
    expect(viewsFor(['heatRemoved', 'chipPower', 'gasLoad'])).toEqual([
      { title: 'Heat against chip power', points: ['heatRemoved', 'chipPower'] },
    ]);
  });
});

describe('the value at the pointer', () => {
  const line = {
    key: 'e7:a',
    letter: 'a',
    ink: 0,
    seconds: [0, 10, 20, 30],
    min: [1, 2, null, 3],
    mean: [2, 3, null, 4],
    max: [3, 4, null, 9],
    uncertainty: null,
  };
  it('is the nearest, none in a gap, none outside', () => {
    expect([2, 8, 20, 29, -1, 31].map((at) => valueAt(line, at))).toEqual([2, 3, null, 4, null, null]);
  });

  it('runs between the least and the most of what is shown', () => {
    expect(extremes(line, 0, 20)).toEqual({ min: 1, max: 4 });
    expect(extremes(line, 15, 25)).toBeNull();
  });
});

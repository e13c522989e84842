import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { buildLanes } from '../../../../frontend/src/screens/trends/build-lanes';
import { comparisonsOf, namesOf } from '../../../../frontend/src/screens/trends/compared';
import { heatBeside } from '../../../../frontend/src/screens/trends/heat-beside';
import { captureOf, heatPairs } from '../../../../frontend/src/screens/trends/heat-pairs';
import { matchPoints } from '../../../../frontend/src/screens/trends/match-points';
import { movePeriod, spanBetween } from '../../../../frontend/src/screens/trends/move-period';
import { viewsFor } from '../../../../frontend/src/screens/trends/prepared-views';
import { sayEmptyLane } from '../../../../frontend/src/screens/trends/say-empty-lane';
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

describe('an empty lane', () => {
  const points = [name('heatRemoved'), name('chipPower')];
  const nothing = { columns: new Map(), problems: new Map(), busy: false };
  const columns = new Map(points.map(({ point }) => [`e7:${point}`, history(point, [null])]));
  it('says that nothing was measured only once the history has answered for every point', () => {
    expect(sayEmptyLane(points, { ...nothing, columns }, false)).toBe('Nothing measured in this period.');
    // Before it was asked at all, and while it is.
    expect(sayEmptyLane(points, nothing, false)).toBe('Reading the history…');
    expect(sayEmptyLane(points, { ...nothing, columns }, true)).toBe('Reading the history…');
  });
  it('says that it is not known where the history could not be read', () => {
    const problems = new Map([['e7:chipPower', 'The history did not answer in time.']]);
    const heat = new Map([...columns].slice(0, 1));
    expect(sayEmptyLane(points, { ...nothing, columns: heat, problems }, false)).toMatch(/is not known/);
  });
});

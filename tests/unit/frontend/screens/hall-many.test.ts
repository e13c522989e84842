import { describe, expect, it } from 'vitest';
import { heatSlices } from '../../../../frontend/src/components/heat-slices';
import { arrangeLoops, type HallItem } from '../../../../frontend/src/screens/hall/arrange-loops';
import { hallQuery, readHallAddress } from '../../../../frontend/src/screens/hall/hall-address';
import { layOutRows } from '../../../../frontend/src/screens/hall/lay-out-rows';
import { leastCaptured } from '../../../../frontend/src/screens/hall/least-captured';
import { byNeed, needOf } from '../../../../frontend/src/screens/hall/need-of';
import { sayElsewhere } from '../../../../frontend/src/screens/hall/say-elsewhere';
import { sayHall } from '../../../../frontend/src/screens/hall/say-hall';
import { shortNames } from '../../../../frontend/src/screens/hall/short-names';
import { smallWords } from '../../../../frontend/src/screens/hall/small-words';
import { splitColumns } from '../../../../frontend/src/screens/hall/split-columns';
import { wallNeeds } from '../../../../frontend/src/screens/hall/wall-needs';
import { aFigure, aLine, anAlarm, aSite, aWindow } from '../../../screens/fixtures/builders';

const worst = (more: Parameters<typeof anAlarm>[1] = {}) => ({ ...anAlarm('x:AIR-1', more), detail: null });
const calm = aLine('e1');
const silent = aLine('e2', {
  pressureWindow: aWindow({ vacuumMargin: aFigure(14_000, { quality: 'bad', reasons: ['stale'] }) }),
});
const tight = aLine('e3', { pressureWindow: aWindow({ vacuumMargin: aFigure(4_100) }) });
const nearWall = aLine('e4', { pressureWindow: aWindow({ lowestPa: 12_000 }) });
const draining = aLine('e5', { mode: 'draining' });
const vented = aLine('e6', {
  mode: 'vented',
  ventedNotProtected: true,
  pressureWindow: aWindow({ vacuumMargin: aFigure(null) }),
});
const needing = aLine('e7', { worst: worst() });
const keys = (items: readonly HallItem[]): readonly string[] =>
  items.map((item) => (item.kind === 'title' ? item.text : item.key));

describe('what a loop needs', () => {
  it('is a person where an alarm stands, also for one of which nothing is known', () => {
    expect(needOf(needing)).toBe('person');
    expect(needOf({ ...silent, worst: worst() })).toBe('person');
  });

  it('is told of either gap that may lie below its guard, before any alarm', () => {
    expect([tight, nearWall].map(needOf)).toEqual(['margin', 'margin']);
  });

  it('is never calm without a fresh margin, in work, or in a mode that is not running or not known', () => {
    expect(needOf(silent)).toBe('unknown');
    expect(needOf(aLine('e8', { pressureWindow: aWindow({ vacuumMargin: aFigure(null) }) }))).toBe('unknown');
    expect([draining, vented, aLine('e8', { modeKnown: false }), aLine('e8', { openPermits: 1 })].map(needOf)).toEqual(
      Array(4).fill('work'),
    );
    expect(needOf(calm)).toBe('calm');
  });

  it('orders by urgency, then what still is so, then who waits for an answer, then the longest; the rest keeps its place', () => {
    const line = (unit: string, more: Parameters<typeof anAlarm>[1]) => aLine(unit, { worst: worst(more) });
    const lines = [
      calm,
      line('late', { since: '2026-03-01T11:50:00.000Z' }),
      line('gone', { state: 'returnedUnacknowledged' }),
      line('seen', { state: 'acknowledged' }),
      line('long', { since: '2026-03-01T10:00:00.000Z' }),
      line('urgent', { priority: 1 }),
      aLine('e0'),
      silent,
    ];
    expect(byNeed(lines).map(({ unit }) => unit)).toEqual(['urgent', 'long', 'late', 'seen', 'gone', 'e2', 'e1', 'e0']);
  });
});

describe('a hall in one sentence', () => {
  it('is calm only where every loop is known, fresh and in no need, and says how old the oldest margin is', () => {
    const old = aLine('e8', { pressureWindow: aWindow({ vacuumMargin: aFigure(9_000, { age: 2.5 }) }) });
    expect(sayHall({ loops: [calm, old] }, 0)).toEqual({
      calm: true,
      text: 'This hall is calm: all 2 units keep their margins and nobody is needed.',
      needs: 0,
      aside: 0,
      age: 2.5,
    });
    for (const one of [needing, silent, tight, nearWall]) expect(sayHall({ loops: [calm, one] }, 0).calm).toBe(false);
    expect(sayHall({ loops: [calm] }, 1).calm).toBe(false);
    expect(sayHall({ loops: [] }, 0).calm).toBe(false);
  });

  it('says what is in work beside, and never that it keeps a margin', () => {
    expect(sayHall({ loops: [calm, draining, vented] }, 0).text).toBe(
      'This hall is calm: 1 unit keeps its margins and nobody is needed; 1 unit vented, not protected; 1 unit draining.',
    );
  });

  it('names each mode, one that is not known too, and counts as kept what runs under a permit', () => {
    const lines = [
      aLine('e1', { mode: 'off' }),
      aLine('e2', { mode: 'off' }),
      aLine('e3', { modeKnown: false }),
      aLine('e4', { openPermits: 1 }),
    ];
    expect(sayHall({ loops: lines }, 0)).toMatchObject({
      calm: true,
      text: 'This hall is calm: 1 unit keeps its margins and nobody is needed; 2 units off; 1 unit in a mode not known, judged as running; 1 unit under an open permit.',
    });
    expect(sayHall({ loops: [needing, draining] }, 0).text).toBe('1 unit of 2 needs a person; 1 unit draining.');
  });

  it('is not called calm where no unit is known to run: what does not run keeps nothing', () => {
    const off = aLine('e1', { mode: 'off' });
    expect(sayHall({ loops: [off, vented] }, 0)).toMatchObject({
      calm: false,
      text: 'No unit is running here; 1 unit vented, not protected; 1 unit off.',
      needs: 0,
    });
    expect(sayHall({ loops: [aLine('e1', { modeKnown: false })] }, 0)).toMatchObject({
      calm: false,
      text: 'No unit is known to run here; 1 unit in a mode not known, judged as running.',
    });
  });

  it('counts who needs a person, what is of no unit, what may lie below a guard and what is not known', () => {
    expect(sayHall({ loops: [calm, needing, tight, silent, silent] }, 2).text).toBe(
      '1 unit of 5 needs a person, 2 alarms of no single unit stand, 1 unit may lie below a guard, 2 units without a fresh margin.',
    );
  });
});

describe('the order of a hall', () => {
  const lines = [aLine('e1'), needing, aLine('w1')];
  it('is that of the site file, with units of one loop together, unless the address says otherwise', () => {
    const site = { ...aSite(), loops: [{ id: 'l', name: 'Loop L', units: ['e1', 'w1'], unitsNeeded: 1 }] };
    const usual = { order: 'place', group: 'loop' } as const;
    expect(keys(arrangeLoops(lines, site, usual))).toEqual(['Loop L: 2 units on one loop, 1 needed', 'e1', 'w1', 'e7']);
    expect(keys(arrangeLoops(lines, site, { ...usual, group: 'none' }))).toEqual(['e1', 'e7', 'w1']);
    expect(keys(arrangeLoops(lines, site, { ...usual, group: 'gateway' }))).toEqual([
      'Gateway g1: 3',
      'e1',
      'e7',
      'w1',
    ]);
  });

  it('by need has a heading for each need with how many', () => {
    expect(keys(arrangeLoops(lines, aSite(), { order: 'need', group: 'loop' }))).toEqual([
      'A person is needed: 1',
      'e7',
      'Calm: 2',
      'e1',
      'w1',
    ]);
  });
});

describe('the address of a hall', () => {
  it('leaves out what is as usual, keeps what is of others, and takes what it does not know for usual', () => {
    expect(hallQuery({ value: 'x:y', order: 'need' }, { order: 'place', wall: true })).toEqual({
      value: 'x:y',
      wall: 'on',
    });
    expect(readHallAddress({ order: 'size', group: ['loop'], rows: 'small' })).toEqual({
      order: 'place',
      group: 'loop',
      rows: 'small',
      wall: false,
    });
    expect(readHallAddress(hallQuery({}, { order: 'need', group: 'none', rows: 'full' }))).toEqual({
      order: 'need',
      group: 'none',
      rows: 'full',
      wall: false,
    });
  });
});

describe('rows of many loops', () => {
  it('are as large as they may be while all are seen, and never too low to be met alone', () => {
    expect(layOutRows(200, 3776, 1800)).toEqual({ columns: 5, rowPx: 40 });
    expect(layOutRows(200, 1376, 620)).toEqual({ columns: 7, rowPx: 24 });
    expect(layOutRows(200, 328, 500)).toEqual({ columns: 1, rowPx: 28 });
    expect(layOutRows(12, 1376, 600)).toEqual({ columns: 1, rowPx: 40 });
  });

  it('all have their place on a wall, low as they may become', () => {
    for (const [rows, width, height] of [
      [200, 1880, 600],
      [200, 3776, 1300],
      [12, 1880, 700],
    ] as const) {
      const { columns, rowPx } = layOutRows(rows, width, height, true);
      expect(columns * Math.floor(height / rowPx)).toBeGreaterThanOrEqual(rows);
    }
  });

  it('fill a wall of few loops as far as letters can be read across the room', () => {
    expect(layOutRows(10, 3776, 1500, true)).toEqual({ columns: 2, rowPx: 240 });
    expect(layOutRows(10, 1856, 700, true)).toEqual({ columns: 2, rowPx: 120 });
    expect(layOutRows(3, 1856, 700, true)).toEqual({ columns: 1, rowPx: 140 });
  });

  it('are read down one column and then the next, a heading with what follows it', () => {
    const item = (key: string) => ({ kind: key.startsWith('t') ? 'title' : 'loop', key });
    const split = splitColumns(['a', 'b', 't1', 'c', 'd', 'e'].map(item), 2);
    expect(split.map((column) => column.map(({ key }) => key))).toEqual([
      ['a', 'b'],
      ['t1', 'c', 'd', 'e'],
    ]);
    expect(splitColumns([], 3)).toEqual([]);
  });

  it('leave out of the names what all begin with, and never the last word', () => {
    expect(shortNames(['Unit u1', 'Unit u2'])).toEqual(['u1', 'u2']);
    expect(shortNames(['Unit', 'Unit'])).toEqual(['Unit', 'Unit']);
    expect(shortNames(['N 1', 'South 1'])).toEqual(['N 1', 'South 1']);
    expect(shortNames(['Unit u1'])).toEqual(['Unit u1']);
  });

  it('name in their words the alarm, else what is unusual, else the wall that binds', () => {
    const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
    expect(smallWords({ ...needing, moreAlarms: 2 })).toBe('Vacuum margin small and 2 more');
    expect(smallWords(draining)).toBe('draining');
    expect(plain(smallWords(calm))).toBe('32 kPa to boiling');
  });
});

describe('heat against chip power, unit by unit', () => {
  it('takes width for power and height for the part that is taken off, and says which heat is not known', () => {
    const parts = [
      { heat: aFigure(80), power: aFigure(100) },
      { heat: aFigure(null), power: aFigure(100) },
      { heat: aFigure(50), power: aFigure(null) },
      { heat: aFigure(300), power: aFigure(200) },
    ];
    const { power, heat, unknown } = heatSlices(parts, 400, 10);
    expect(power).toBe('M0 0H100V10H0ZM100 0H200V10H100ZM200 0H400V10H200Z');
    expect(heat).toBe('M0 2H100V10H0ZM200 0H400V10H200Z');
    expect(unknown).toBe('M100 0H200V10H100Z');
    expect(heatSlices([], 400, 10).power).toBe('');
  });

  it('names the loop that takes off the least of a load worth the name', () => {
    const line = (unit: string, heat: number | null, power: number) =>
      aLine(unit, { heatRemoved: aFigure(heat), chipPower: aFigure(power) });
    const lines = [line('a', 90, 100), line('b', 70, 100), line('idle', 0, 2), line('c', null, 100)];
    expect(leastCaptured(lines)).toMatchObject({ unit: 'b', share: 0.7 });
    expect(leastCaptured([line('c', null, 100)])).toBeNull();
  });
});

describe('what is told of other halls', () => {
  it('counts what calls there by its urgency', () => {
    const call = (unit: string | null, priority: 1 | 2 | 3) => ({
      id: `${unit}:${priority}`,
      unit,
      title: '',
      where: null,
      priority,
      since: '',
    });
    const newest = [call('e1', 1), call('w1', 2), call('w2', 2), call('w2', 1), call(null, 1)];
    expect(sayElsewhere({ loops: [calm], calling: { total: 5, newest } })).toBe(
      'In other halls not acknowledged: 1 × act now, 2 × act soon.',
    );
    expect(sayElsewhere({ loops: [calm] })).toBe('');
  });
});

describe('what a wall tells', () => {
  const of = (count: number) => Array.from({ length: count }, (_, at) => aLine(`u${at}`, { worst: worst() }));
  it('is every loop that needs somebody, the most urgent first, and no other', () => {
    const lines = [calm, silent, draining, needing, tight];
    expect(wallNeeds(lines, () => undefined).map(({ name, text }) => [name, text])).toEqual([
      ['E7', 'Vacuum margin small'],
      ['E3', 'a margin may lie below its guard'],
      ['E2', 'no fresh margin'],
    ]);
    expect(wallNeeds(of(24), () => undefined)).toHaveLength(24);
  });

  it('is what many need in common where there are many, with how many and the first of them, the single ones by name', () => {
    const urgent = aLine('x1', { worst: worst({ priority: 1, title: 'Margin gone' }) });
    const told = wallNeeds([...of(30), urgent], () => undefined);
    expect(told.map(({ name, text }) => [name, text])).toEqual([
      ['X1', 'Margin gone'],
      ['30 units', 'Vacuum margin small'],
    ]);
    expect(told[1]?.then).toBe('U0, U1, U2, U3 and 26 more, marked below');
  });
});

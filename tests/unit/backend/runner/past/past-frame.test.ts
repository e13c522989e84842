import { hallTrailsSchema } from '@ebbline/shared/contract/hall-trails';
import { pastHallSchema, pastUnitSchema } from '@ebbline/shared/contract/past';
import type { Result } from '@ebbline/shared/errors/result';
import { afterEach, describe, expect, it } from 'vitest';
import { atSecond, PastPlant } from './past-plant';

const opened: PastPlant[] = [];
const iso = (second: number): string => new Date(atSecond(second)).toISOString();

function okOf<Value>(result: Result<Value, unknown>): Value {
  if (!result.ok) throw new Error(JSON.stringify(result.fault));
  return result.value;
}
const pastPlant = (): PastPlant => {
  const made = new PastPlant();
  opened.push(made);
  return made;
};
afterEach(() => {
  for (const one of opened.splice(0)) one.close();
});

/** As compared: ages and times history has to the second, the trail of the last hour not. */
const told = (picture: unknown): unknown =>
  JSON.parse(
    JSON.stringify(picture, (key, value: unknown) =>
      ['age', 'time', 'reasons', 'expandedUncertainty', 'hourLowestPa', 'hourHighestPa'].includes(key)
        ? undefined
        : value,
    ),
  );

type Points = ReturnType<PastPlant['live']>['unit']['points'];

/** Each point whose reasons or uncertainty are others than they were live. */
const differing = (past: Points, then: Points): string[] =>
  then.flatMap(({ id, reasons, expandedUncertainty }, i) => {
    const now = past[i];
    const same = JSON.stringify(now?.reasons) === JSON.stringify(reasons);
    const alike =
      expandedUncertainty === null
        ? now?.expandedUncertainty === null
        : Math.abs((now?.expandedUncertainty ?? NaN) / expandedUncertainty - 1) < 1e-6;
    return same && alike ? [] : [`${id} ${String(now?.expandedUncertainty)} ${now?.reasons.join() ?? ''}`];
  });

describe('a past second', () => {
  it('shows a hall and a loop as they were shown live in that very second', async () => {
    const past = pastPlant();
    past.run(100);
    past.plant.m1.pTank = 99;
    past.run(40);
    past.openPermit();
    past.run(5);
    const then = past.live();
    past.plant.m1.pTank = 60;
    past.plant.m1.flow = 100;
    past.run(200);
    const [hall, unit] = [
      okOf(await past.desk.hall('h', then.atMs + 400)),
      okOf(await past.desk.unit('m1', then.atMs)),
    ];
    expect(pastHallSchema.parse(hall)).toEqual(hall);
    expect(pastUnitSchema.parse(unit)).toEqual(unit);
    expect([then.unit.alarms.length > 0, then.unit.permits.length]).toEqual([true, 1]);
    expect(hall).toMatchObject({ at: new Date(then.atMs).toISOString(), silent: null });
    expect(told(hall.frame)).toEqual(told(then.hall));
    expect(told(unit.frame)).toEqual(told(then.unit));
    expect(told(past.live().unit)).not.toEqual(told(then.unit));
    // What was learnt over time is not in history: no uncertainty of a rate, and no reason why a trend was bad.
    expect(differing(unit.frame.points, then.unit.points)).toEqual([
      'supplyTankRate null ',
      'separatorRate null ',
      'loopWaterRate null ',
      'loopWaterTrend null badThen',
      'waterBalance null badThen',
      'waterBalanceSignificance null badThen',
      'marginTimeToLimit null badThen',
      'marginTrend null badThen',
    ]);
  });

  it('draws the trail of the hour before as it was drawn live, a look a minute', async () => {
    const past = pastPlant();
    past.run(100);
    past.plant.m1.pTank = 99;
    past.run(40);
    past.plant.m1.pTank = 74;
    past.run(100);
    const then = past.live();
    past.plant.m1.pTank = 101;
    past.run(100);
    const { frame } = okOf(await past.desk.unit('m1', then.atMs));
    const [now, was] = [frame, then.unit].map(({ line }) => line.pressureWindow);
    expect(was?.hourHighestPa).toBeGreaterThan((was?.highestPa ?? Infinity) + 20_000);
    expect(now?.hourHighestPa).toBeCloseTo(was?.hourHighestPa ?? NaN, 3);
    expect(now?.hourLowestPa).toBeCloseTo(was?.hourLowestPa ?? NaN, 3);
  });

  it('tells the hour of every loop of a hall that ended then, in the minutes of the live one, and nothing of what came after', async () => {
    const past = pastPlant();
    past.run(130);
    past.plant.m1.pTank = 99;
    past.run(60);
    past.plant.m1.pTank = 74;
    past.run(80);
    const [then, live] = [past.live(), past.liveTrails()];
    past.plant.m1.pTank = 101;
    past.run(10);
    const trails = okOf(await past.desk.trails('h', then.atMs));
    expect(hallTrailsSchema.parse(trails)).toEqual(trails);
    const hour = okOf(await past.desk.unit('m1', then.atMs)).frame.line.pressureWindow;
    const [m1, was] = [trails, live].map((one) => one.trails.find(({ unit }) => unit === 'm1'));
    expect([trails.minute, trails.trails.map(({ unit }) => unit)]).toEqual([live.minute, ['m1', 'm2']]);
    const seen = (cells: readonly (number | null)[] = []) => cells.flatMap((pa, at) => (pa === null ? [] : [at]));
    expect(seen(m1?.highestPa)).toEqual(seen(was?.highestPa));
    // Minutes in which nothing swung are the same; one look misses a swing within the minute.
    expect(m1?.highestPa.filter((pa, at) => pa === was?.highestPa[at] && pa !== null).length).toBeGreaterThan(1);
    expect(Math.max(...(m1?.highestPa ?? []).map(Number))).toBe(Math.round(hour.hourHighestPa ?? NaN));
    expect(okOf(await past.desk.hall('h', then.atMs)).frame.loops[0]?.pressureWindow.hourHighestPa).toBeNull();
    expect(await past.desk.trails('h', past.plant.nowMs)).toMatchObject({ fault: { code: 'PAST_NOT_YET' } });
    expect(await past.desk.trails('x', then.atMs)).toMatchObject({ fault: { code: 'HALL_UNKNOWN' } });
    past.history.minutesBeforeMs = atSecond(1000);
    const gone = okOf(await past.desk.trails('h', then.atMs));
    expect(gone.trails.flatMap(({ highestPa }) => seen(highestPa))).toEqual([]);
  });

  it('tells the age of a value as it was then, stale where it had not come for long', async () => {
    const past = pastPlant();
    past.run(60);
    past.plant.silent.add('m1');
    past.run(20);
    const then = past.live();
    past.plant.silent.clear();
    past.run(30);
    const { frame } = okOf(await past.desk.unit('m1', then.atMs));
    const [old, was] = [frame, then.unit].map(({ points }) => points.find(({ id }) => id === 'supply.temperature'));
    expect(old).toMatchObject({ age: 20, quality: 'bad', reasons: ['stale'], value: was?.value });
    expect(was?.reasons).toEqual(['stale']);
  });

  it('shows nothing of a time at which nothing was recorded, and tells from when to when', async () => {
    const past = pastPlant();
    past.run(60).restartAfter(300).run(60);
    const { frame, silent } = okOf(await past.desk.unit('m1', atSecond(200)));
    expect(silent).toEqual({ from: iso(61), to: iso(360) });
    const shown = frame.points.filter(({ value }) => value !== null);
    expect(shown).toEqual([]);
    expect(new Set(frame.points.flatMap(({ reasons }) => reasons))).toEqual(
      new Set(['notRecorded', 'notApplicable', 'notSet']),
    );
    expect(frame.line).toMatchObject({ heatRemoved: { value: null }, pressureWindow: { lowestPa: null } });
  });

  it('refuses what is not recorded yet, and what was before the first record', async () => {
    const past = pastPlant();
    past.run(60);
    expect(await past.desk.hall('h', atSecond(58))).toMatchObject({ ok: false, fault: { code: 'PAST_NOT_YET' } });
    expect(await past.desk.hall('h', atSecond(1e6))).toMatchObject({ ok: false, fault: { code: 'PAST_NOT_YET' } });
    const before = await past.desk.unit('m1', atSecond(-500));
    expect(before).toMatchObject({ ok: false, fault: { code: 'PAST_BEFORE_RECORDS' } });
    expect(before.ok ? '' : before.fault.message).toContain(iso(0));
    expect(await past.desk.unit('m9', atSecond(31))).toMatchObject({ ok: false, fault: { code: 'UNIT_UNKNOWN' } });
    expect(await past.desk.hall('x', atSecond(31))).toMatchObject({ ok: false, fault: { code: 'HALL_UNKNOWN' } });
  });

  it('is shown by its minute where only minutes are kept: means, what was the same all the minute, and alarms of its end', async () => {
    const past = pastPlant();
    past.run(130);
    past.plant.m1.pTank = 102;
    past.plant.m1.pumpRunning = false;
    past.run(260);
    const minute = 120;
    const seconds = await past.history.readSeconds({
      holder: 'm1',
      columns: [{ point: 'supplyTank.pressure', unitOfMeasure: 'Pa' }],
      fromMs: atSecond(minute),
      toMs: atSecond(minute + 60),
    });
    const mean = [...(seconds.values[0] ?? [])].reduce((sum, one) => sum + one, 0) / 60;
    past.history.minutesBeforeMs = atSecond(1000);
    const [unit, hall] = [
      okOf(await past.desk.unit('m1', atSecond(minute + 20))),
      okOf(await past.desk.hall('h', atSecond(minute + 20))),
    ];
    expect(pastUnitSchema.parse(unit)).toEqual(unit);
    expect(unit).toMatchObject({ at: iso(minute), resolution: 'minute', silent: null });
    expect(unit.notes[0]).toContain('only minutes are kept');
    expect(unit.frame.line.pressureWindow).toMatchObject({ hourLowestPa: null, hourHighestPa: null });
    const point = (id: string) => unit.frame.points.find((one) => one.id === id);
    expect(point('supplyTank.pressure')).toMatchObject({ value: mean, quality: 'good', age: 0 });
    expect(point('pump.running')).toMatchObject({ value: null, reasons: ['notRecorded'] });
    expect(unit.frame.alarms.map(({ id }) => id)).toContain('m1:MARGIN-2');
    expect(hall).toMatchObject({ at: iso(minute), resolution: 'minute' });
    const before = okOf(await past.desk.unit('m1', atSecond(minute - 60)));
    expect(before.frame.points.find(({ id }) => id === 'pump.running')).toMatchObject({ value: 1 });
    const nothing = await past.desk.unit('m1', atSecond(-500));
    expect(nothing).toMatchObject({ ok: false, fault: { code: 'PAST_BEFORE_RECORDS' } });
  });

  it('marks what happened in a period, and where nothing was recorded', async () => {
    const past = pastPlant();
    past.run(60);
    past.plant.m1.pTank = 102;
    past.run(30);
    past.openPermit();
    past.plant.m1.pTank = 70;
    past.run(60).restartAfter(100).run(60);
    const wanted = { hall: 'h', unit: null, fromMs: atSecond(1), toMs: atSecond(300) };
    const { marks, gaps, more } = okOf(await past.desk.marks(wanted));
    const ofMargin = marks.filter(({ alarm }) => alarm === 'm1:MARGIN-2');
    expect(ofMargin.map(({ kind, priority, unit }) => [kind, priority, unit])).toEqual([
      ['raised', expect.any(Number), 'm1'],
      ['gone', expect.any(Number), 'm1'],
    ]);
    expect(marks.map(({ kind }) => kind)).toContain('permitOpened');
    const [started] = marks.filter(({ kind }) => kind === 'programStarted');
    expect(started).toMatchObject({ time: iso(250), title: 'Ebbline began again' });
    expect([gaps, more]).toEqual([[{ from: iso(151), to: iso(250) }], false]);
    // By whole minutes where only those are left.
    past.history.minutesBeforeMs = atSecond(200);
    expect(okOf(await past.desk.marks(wanted)).gaps).toEqual([{ from: iso(180), to: iso(250) }]);
    past.history.minutesBeforeMs = atSecond(400);
    expect(okOf(await past.desk.marks(wanted)).gaps).toEqual([{ from: iso(180), to: iso(240) }]);
    past.history.minutesBeforeMs = Number.NEGATIVE_INFINITY;
    const ofOther = okOf(await past.desk.marks({ ...wanted, hall: null, unit: 'm2' }));
    expect(ofOther.marks.filter(({ unit }) => unit === 'm1')).toEqual([]);
    const after = okOf(await past.desk.marks({ ...wanted, fromMs: atSecond(200) }));
    expect(after.marks.filter(({ alarm }) => alarm === 'm1:MARGIN-2')).toEqual([]);
  });
});

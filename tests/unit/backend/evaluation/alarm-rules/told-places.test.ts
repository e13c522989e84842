import { describe, expect, it } from 'vitest';
import { hasPlace, withPlace } from '../../../../../backend/src/evaluation/alarm-rules/told-places';
import { RuleBench } from './rule-bench';

const ropes = ['tray.water.found', 'branch.r1.water.found', 'branch.r2.water.found'];
const standbys = ['pump.available', 'vacuum.available', 'pump.standby.running', 'vacuum.standby.running'];

const dry = (): RuleBench =>
  new RuleBench({ also: ropes, values: Object.fromEntries(ropes.map((id) => [id, 0])) }).run(5);

const ready = (more: Readonly<Record<string, number>> = {}): RuleBench =>
  new RuleBench({
    also: [...standbys, ...Object.keys(more)],
    values: {
      'pump.available': 1,
      'vacuum.available': 1,
      'pump.standby.running': 0,
      'vacuum.standby.running': 0,
      ...more,
    },
  }).run(5);

/** Somebody has seen what was told so far; the plant runs on as it is. */
function seen(bench: RuleBench, entry: string, seconds = 600): RuleBench {
  const actor = { operator: 'Ada', station: 'desk', comment: null };
  const acted = bench.pipeline.book.acknowledge(`m1:${entry}`, actor as never, bench.nowMs);
  expect(acted.ok).toBe(true);
  return bench.run(seconds);
}

const told = (bench: RuleBench, entry: string): readonly string[] =>
  bench.pipeline.transitions
    .filter((one) => one.entry === entry && one.to === 'unacknowledged')
    .map((one) => one.where ?? '');

describe('a set of places', () => {
  it.each([0, 1, 25, 26, 31, 32, 51])('has place %i once it was put in, and no other', (place) => {
    const set = withPlace(withPlace(0, place), place);
    expect([0, 1, 25, 26, 31, 32, 51].filter((other) => hasPlace(set, other))).toEqual([place]);
  });
});

describe('WATER-1 at a second place', () => {
  const tray = 'Drip tray of the unit';

  it('is told anew, with that place, though the first was acknowledged', () => {
    const bench = seen(dry().set('tray.water.found', 1).run(5), 'WATER-1');
    expect(bench.alarm('WATER-1')).toMatchObject({ state: 'acknowledged', where: tray });
    bench.set('branch.r2.water.found', 1).run(1);
    expect(bench.alarm('WATER-1')?.state).toBe('acknowledged');
    bench.run(1);
    expect(bench.alarm('WATER-1')).toMatchObject({ state: 'unacknowledged', where: 'Rack r2', acknowledgedBy: null });
    expect(bench.alarm('WATER-1')?.detail).toMatch(/own tray.*At Rack r2/);
    expect(told(bench.run(600), 'WATER-1')).toEqual([tray, 'Rack r2']);
  });

  it('says the new place where it was not acknowledged yet, and each of several', () => {
    const bench = dry().set('branch.r2.water.found', 1).run(5).set('branch.r1.water.found', 1).run(5);
    expect(told(bench.set('tray.water.found', 1).run(5), 'WATER-1')).toEqual(['Rack r2', 'Rack r1', tray]);
  });

  it('is told once where the rope flickers, and again once the alarm has ended', () => {
    const bench = seen(dry().set('tray.water.found', 1).run(5), 'WATER-1');
    bench.run(600, (second) => bench.set('branch.r2.water.found', second % 20 < 10 ? 1 : 0));
    expect(told(bench, 'WATER-1')).toEqual([tray, 'Rack r2']);
    bench.set('tray.water.found', 0).set('branch.r2.water.found', 0).run(30);
    bench.set('branch.r2.water.found', 1).run(5);
    expect(told(bench, 'WATER-1')).toEqual([tray, 'Rack r2', 'Rack r2']);
  });

  it('is not told for one odd reading, nor for a rope that is lost', () => {
    const bench = seen(dry().set('tray.water.found', 1).run(5), 'WATER-1');
    bench.set('branch.r2.water.found', 1).run(1).set('branch.r2.water.found', 0).run(5);
    bench.set('branch.r2.water.found', 1).bad('branch.r2.water.found').run(30);
    expect(told(bench, 'WATER-1')).toEqual([tray]);
  });

  it('keeps the place that is known where the unit reports water besides', () => {
    const bench = seen(dry().set('branch.r1.water.found', 1).run(5), 'WATER-1').set('water.found', 1).run(5);
    expect(told(bench, 'WATER-1')).toEqual(['Rack r1', 'Rack r1']);
    expect(bench.alarm('WATER-1')?.detail).toMatch(/The unit reports water too/);
  });
});

describe('PUMP-2 of the second standby', () => {
  it('is told anew a minute after that one is lost too', () => {
    const bench = seen(ready().set('pump.available', 0).run(70), 'PUMP-2').set('vacuum.available', 0).run(60);
    expect(bench.alarm('PUMP-2')?.state).toBe('acknowledged');
    const both = 'standby pump and standby vacuum source';
    expect(bench.run(1).alarm('PUMP-2')).toMatchObject({ state: 'unacknowledged', where: both });
    expect(bench.alarm('PUMP-2')?.detail).toBe(`Not available: ${both}.`);
  });

  it('is told anew where the one that is left has not run for a week, and says both', () => {
    const bench = ready().set('vacuum.standby.running', 1).hours(24).set('vacuum.standby.running', 0);
    seen(bench.set('pump.available', 0).run(70), 'PUMP-2').hours(8 * 24);
    expect(told(bench, 'PUMP-2')).toEqual(['standby pump', 'standby vacuum source']);
    expect(bench.alarm('PUMP-2')?.detail).toBe(
      'Not available: standby pump. The standby vacuum source has not been seen to run for 7 days.',
    );
  });

  it('is not told anew where one that is missing has, of course, not run for a week either', () => {
    const bench = ready().set('vacuum.standby.running', 1);
    seen(bench.set('pump.available', 0).run(70), 'PUMP-2').hours(9 * 24);
    expect(told(bench, 'PUMP-2')).toEqual(['standby pump']);
  });
});

describe('VSRC-2 of the second standby', () => {
  const pumpRuns = (bench: RuleBench): RuleBench => seen(bench.set('pump.standby.running', 1).run(10), 'VSRC-2');

  it('is told anew five seconds after that one has started by itself', () => {
    const bench = pumpRuns(ready()).set('vacuum.standby.running', 1).run(5);
    expect(bench.alarm('VSRC-2')?.state).toBe('acknowledged');
    const where = 'vacuum source and transfer pump';
    expect(bench.run(1).alarm('VSRC-2')).toMatchObject({ state: 'unacknowledged', where });
  });

  it('is told anew where the one stops and the other starts within the off-delay', () => {
    const bench = pumpRuns(ready()).set('pump.standby.running', 0).run(10).set('vacuum.standby.running', 1).run(10);
    expect(told(bench, 'VSRC-2')).toEqual(['transfer pump', 'vacuum source']);
  });

  it('is not told anew for one that a person starts in hand', () => {
    const bench = pumpRuns(ready({ 'control.manual': 0 })).set('control.manual', 1);
    expect(told(bench.set('vacuum.standby.running', 1).run(60), 'VSRC-2')).toEqual(['transfer pump']);
  });

  it('is told once where the pump starts beside a source that helped to draw the loop down', () => {
    const bench = ready({ 'separator.setPoint': 32_000 }).set('separator.setPoint', 28_000).run(10);
    bench.set('vacuum.standby.running', 1).run(20).set('pump.standby.running', 1).run(600);
    expect(told(bench, 'VSRC-2')).toEqual(['vacuum source and transfer pump']);
  });

  it('waits with a source that helps to draw the loop down until it has had five minutes for that', () => {
    const bench = pumpRuns(ready({ 'separator.setPoint': 32_000 }))
      .set('separator.setPoint', 28_000)
      .run(10);
    bench.set('vacuum.standby.running', 1).run(200);
    expect(told(bench, 'VSRC-2')).toEqual(['transfer pump']);
    expect(told(bench.run(120), 'VSRC-2')).toEqual(['transfer pump', 'vacuum source and transfer pump']);
  });
});

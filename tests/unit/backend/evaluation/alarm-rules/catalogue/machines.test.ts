import { describe, expect, it } from 'vitest';
import type { VacuumSource } from '../../../../../../backend/src/evaluation/site/compiled-site';
import { RuleBench } from '../rule-bench';

const source = (control: VacuumSource['control']): VacuumSource => ({
  count: 2,
  control,
  controlStated: true,
  sealWaterC: 25,
  pressurePa: [5000, 101_000],
  suctionM3PerS: [0.01, 0.02],
});

const commands = ['vacuum.command', 'pump.command', 'vacuum.standby.running', 'pump.standby.running', 'chipPower'];

const commanded = (): RuleBench =>
  new RuleBench({
    also: commands,
    vacuumSource: source('speed'),
    values: {
      'vacuum.command': 1,
      'pump.command': 1,
      'vacuum.standby.running': 0,
      'pump.standby.running': 0,
      chipPower: 240_000,
    },
  }).run(30);

describe('VSRC-1 with a command', () => {
  it('is raised 2 s after the feedback is lost, as priority 2, and clears 5 s after it is back', () => {
    const bench = commanded().set('vacuum.running', 0);
    expect(bench.secondsUntil('VSRC-1', 10)).toBe(3);
    expect(bench.alarm('VSRC-1')).toMatchObject({ priority: 2, value: 0 });
    bench.set('vacuum.running', 1);
    expect(bench.secondsUntilGone('VSRC-1', 10)).toBe(6);
  });

  it('is not raised where the command is off as well', () => {
    expect(commanded().set('vacuum.command', 0).set('vacuum.running', 0).run(60).active('VSRC-1')).toBe(false);
  });

  it('holds on bad feedback or a bad command, raised or not', () => {
    const quiet = commanded().bad('vacuum.running').run(30);
    expect(quiet.active('VSRC-1')).toBe(false);
    const raised = commanded().set('vacuum.running', 0).run(5);
    expect(raised.bad('vacuum.command').run(60).active('VSRC-1')).toBe(true);
    expect(raised.bad('vacuum.running').run(60).active('VSRC-1')).toBe(true);
  });

  it.each(['off', 'vented', 'tightnessTest', 'draining'] as const)('is off in mode %s', (mode) => {
    expect(commanded().mode(mode).set('vacuum.running', 0).run(30).active('VSRC-1')).toBe(false);
  });

  it.each(['standby', 'stopping', 'running'] as const)('is on in mode %s: a stopped loop keeps its vacuum', (mode) => {
    expect(commanded().mode(mode).set('vacuum.running', 0).run(30).active('VSRC-1')).toBe(true);
  });

  it('says whether the standby has taken over, and tells warm seal water', () => {
    const bench = new RuleBench({
      also: [...commands, 'vacuum.sealWater.temperature', 'vacuum.trap.full'],
      vacuumSource: source('speed'),
      values: { 'vacuum.command': 1, 'vacuum.standby.running': 0, 'vacuum.sealWater.temperature': 25 },
    }).run(10);
    bench.set('vacuum.running', 0).run(5);
    expect(bench.detail('VSRC-1')).toBe('No standby source runs.');
    bench.set('vacuum.standby.running', 1).set('vacuum.sealWater.temperature', 40).run(1);
    expect(bench.detail('VSRC-1')).toMatch(/has taken over.*Seal water is at 40 °C, 15 K above.*seal cooler/);
    expect(bench.detail('VSRC-1')).not.toMatch(/\bleak/);
  });
});

describe('VSRC-1 without a command', () => {
  const without = (control: VacuumSource['control'], also: readonly string[] = []): RuleBench =>
    new RuleBench({ also, vacuumSource: source(control) }).run(30);

  it('is raised where a source by speed stands while the loop runs', () => {
    expect(without('speed').set('vacuum.running', 0).secondsUntil('VSRC-1', 10)).toBe(3);
  });

  it('takes the rest of a source that starts and stops for no trip', () => {
    const bench = without('startStop');
    for (let cycle = 0; cycle < 5; cycle += 1) {
      bench.set('vacuum.running', 0).run(604);
      bench.set('vacuum.running', 1).run(120);
    }
    expect(bench.active('VSRC-1')).toBe(false);
  });

  it('takes a stop for a rest where the site file does not say how the source is held, until the pressure has risen', () => {
    const bench = new RuleBench().run(30).set('vacuum.running', 0).run(600);
    expect(bench.active('VSRC-1')).toBe(false);
    expect(bench.set('separator.pressure', 36_100).run(5).active('VSRC-1')).toBe(true);
  });

  it('is raised where such a source rests although the separator has left its set point by 4 kPa', () => {
    const bench = without('startStop', ['separator.setPoint']).set('separator.setPoint', 32_000);
    bench.set('vacuum.running', 0).set('separator.pressure', 35_900).run(60);
    expect(bench.active('VSRC-1')).toBe(false);
    bench.set('separator.pressure', 36_100);
    expect(bench.secondsUntil('VSRC-1', 10)).toBe(3);
  });
});

describe('PUMP-1', () => {
  it('is raised 2 s after the feedback is lost, and as priority 1 where no standby runs', () => {
    const bench = commanded().set('pump.running', 0);
    expect(bench.secondsUntil('PUMP-1', 10)).toBe(3);
    expect(bench.alarm('PUMP-1')?.priority).toBe(1);
    bench.set('pump.running', 1);
    expect(bench.secondsUntilGone('PUMP-1', 10)).toBe(6);
  });

  it('is priority 2 where the standby has taken over within its delay', () => {
    const bench = commanded().set('pump.running', 0).set('pump.standby.running', 1).run(5);
    expect(bench.alarm('PUMP-1')?.priority).toBe(2);
    expect(bench.detail('PUMP-1')).toMatch(/standby pump has taken over/);
  });

  it('takes its time to respond from what the supply tank still holds', () => {
    const bench = new RuleBench({ also: [...commands, 'timeToEmpty'], values: { 'pump.command': 1 } }).run(10);
    bench.set('timeToEmpty', 240).set('pump.running', 0).run(5);
    expect(bench.alarm('PUMP-1')?.priority).toBe(2);
    expect(bench.detail('PUMP-1')).toMatch(/empty in 4 min/);
  });

  it('holds on bad feedback', () => {
    expect(commanded().bad('pump.running').run(30).active('PUMP-1')).toBe(false);
    const raised = commanded().set('pump.running', 0).run(5);
    expect(raised.bad('pump.running').run(60).active('PUMP-1')).toBe(true);
  });

  it.each(['off', 'standby', 'stopping', 'draining'] as const)('is off where a mode point says %s', (mode) => {
    expect(commanded().mode(mode).set('pump.running', 0).run(30).active('PUMP-1')).toBe(false);
  });

  it('is raised without command and mode where chips give off heat, and not where they are idle', () => {
    const bench = (power: number): RuleBench =>
      new RuleBench({ also: ['chipPower'], modeInferred: true, values: { chipPower: power } }).run(30);
    expect(bench(200_000).set('pump.running', 0).run(5).active('PUMP-1')).toBe(true);
    expect(bench(1000).set('pump.running', 0).run(5).active('PUMP-1')).toBe(false);
  });
});

describe('a power failure of a unit whose gateway lives', () => {
  it('is said where pump and vacuum source stop together, with the mode inferred and no commands', () => {
    const bench = new RuleBench({ also: ['chipPower'], modeInferred: true, values: { chipPower: 1000 } }).run(30);
    bench.set('pump.running', 0).set('vacuum.running', 0).run(5);
    expect(bench.all()).toEqual(expect.arrayContaining(['PUMP-1', 'VSRC-1']));
    for (const entry of ['PUMP-1', 'VSRC-1']) expect(bench.detail(entry)).toMatch(/power of the unit lost/);
  });

  it('is not said of two trips a minute apart', () => {
    const bench = commanded().set('pump.running', 0).run(60).set('vacuum.running', 0).run(5);
    expect(bench.detail('VSRC-1')).not.toMatch(/power/);
  });
});

describe('VSRC-2', () => {
  it.each([
    ['vacuum.standby.running', 'vacuum source'],
    ['pump.standby.running', 'transfer pump'],
  ])('is raised 5 s after %s, names it, and clears a minute after', (point, where) => {
    const bench = commanded().set(point, 1);
    expect(bench.secondsUntil('VSRC-2', 20)).toBe(6);
    expect(bench.alarm('VSRC-2')).toMatchObject({ priority: 3, where });
    bench.set(point, 0);
    expect(bench.secondsUntilGone('VSRC-2', 90)).toBe(61);
  });

  it('names the circulation pump of a plant that has no transfer pump', () => {
    const bench = new RuleBench({ shape: 'c', also: commands, values: { 'pump.standby.running': 0 } }).run(10);
    bench.set('pump.standby.running', 1).run(10);
    expect(bench.alarm('VSRC-2')?.where).toBe('circulation pump');
  });

  it('is not raised where the unit is in hand', () => {
    const bench = new RuleBench({ also: [...commands, 'control.manual'], values: { 'control.manual': 1 } }).run(5);
    expect(bench.set('vacuum.standby.running', 1).run(30).active('VSRC-2')).toBe(false);
  });

  describe('beside a lowered set point of the separator', () => {
    const also = [...commands, 'separator.setPoint'];
    const bench = (): RuleBench => new RuleBench({ also, values: { 'separator.setPoint': 32_000 } }).run(10);
    const lowered = (one: RuleBench): RuleBench => one.set('separator.setPoint', 28_000).run(10);

    it('is an alert where it helps to draw the loop down, and an alarm where it still does so five minutes later', () => {
      const one = lowered(bench()).set('vacuum.standby.running', 1).run(20);
      expect([one.alarm('VSRC-2'), one.alert('VSRC-2') !== undefined]).toEqual([undefined, true]);
      expect(one.run(300).alarm('VSRC-2')).toMatchObject({ active: true });
    });

    it('stays an alarm where the standby ran before', () => {
      const one = lowered(bench().set('vacuum.standby.running', 1).run(60));
      expect(one.alarm('VSRC-2')).toMatchObject({ active: true });
      expect(one.run(20).alert('VSRC-2')).toBeUndefined();
    });
  });

  it('folds under the trip that it answers', () => {
    const bench = commanded().set('vacuum.running', 0).set('vacuum.standby.running', 1).run(10);
    expect(bench.alarm('VSRC-2')?.foldedUnder).toBe('m1:VSRC-1');
  });
});

describe('PUMP-2', () => {
  const points = ['pump.available', 'vacuum.available', 'pump.standby.running', 'vacuum.standby.running'];
  const ready = (): RuleBench =>
    new RuleBench({
      also: points,
      values: { 'pump.available': 1, 'vacuum.available': 1, 'pump.standby.running': 0, 'vacuum.standby.running': 0 },
    }).run(5);

  it.each([
    ['pump.available', 'standby pump'],
    ['vacuum.available', 'standby vacuum source'],
  ])('is raised a minute after %s is lost, and says which', (point, where) => {
    const bench = ready().set(point, 0);
    expect(bench.secondsUntil('PUMP-2', 90)).toBe(61);
    expect(bench.alarm('PUMP-2')).toMatchObject({ priority: 3, where });
    expect(bench.detail('PUMP-2')).toBe(`Not available: ${where}.`);
    bench.set(point, 1);
    expect(bench.secondsUntilGone('PUMP-2', 90)).toBe(61);
  });

  it('is raised where a standby has not run for a week, and not before', () => {
    const bench = ready().hours(7 * 24 - 1);
    expect(bench.active('PUMP-2')).toBe(false);
    expect(bench.hours(2).active('PUMP-2')).toBe(true);
    expect(bench.detail('PUMP-2')).toMatch(/not been seen to run for 7 days/);
    bench.set('pump.standby.running', 1).run(1);
    bench.set('pump.standby.running', 0).set('vacuum.standby.running', 1).run(1);
    expect(bench.set('vacuum.standby.running', 0).run(70).active('PUMP-2')).toBe(false);
  });

  it('is not raised where both were changed over on day six', () => {
    const bench = ready().hours(6 * 24);
    bench.set('pump.standby.running', 1).set('vacuum.standby.running', 1).run(10);
    bench
      .set('pump.standby.running', 0)
      .set('vacuum.standby.running', 0)
      .hours(6 * 24);
    expect(bench.active('PUMP-2')).toBe(false);
  });

  it('holds where it is not known whether a standby is there', () => {
    const bench = ready().bad('pump.available').run(300);
    expect(bench.active('PUMP-2')).toBe(false);
    const raised = ready().set('pump.available', 0).run(70);
    expect(raised.bad('pump.available').run(300).active('PUMP-2')).toBe(true);
  });
});

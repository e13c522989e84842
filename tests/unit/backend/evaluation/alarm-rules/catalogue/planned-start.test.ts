import { describe, expect, it } from 'vitest';
import { RuleBench, type BenchOptions } from '../rule-bench';

const litres = (perMinute: number): number => perMinute / 60_000;

/** Stands under vacuum for an hour after it has run for one; chips at 0 kW. */
function standing(options: BenchOptions = {}): RuleBench {
  const bench = new RuleBench({ ...options, also: ['chipPower', ...(options.also ?? [])] });
  bench.set('chipPower', 200_000).mode('running').run(3700);
  return stop(bench).run(3600);
}

const stop = (bench: RuleBench): RuleBench =>
  bench.mode('standby').set('chipPower', 0).set('pump.running', 0).set('loop.flow', 0);
const starting = (bench: RuleBench): RuleBench => bench.mode('starting').run(30);
const flows = (bench: RuleBench): RuleBench => bench.set('pump.running', 1).set('loop.flow', litres(346));

describe('a planned start', () => {
  it('has the pump wait for its vacuum, told by no command', () => {
    const bench = starting(standing());
    expect(bench.active('PUMP-1')).toBe(false);
    expect(starting(standing().bad('chipPower')).active('PUMP-1')).toBe(false);
  });

  it('tells a pump that trips after it ran in this start, and not by one that ran in the start before', () => {
    const bench = starting(standing()).set('pump.running', 1).run(10).set('pump.running', 0);
    expect(bench.secondsUntil('PUMP-1', 10)).toBe(3);
    const again = starting(stop(bench).run(600));
    expect(again.active('PUMP-1')).toBe(false);
  });

  it('tells a pump that stands, and flow that is not there, while chips give off heat', () => {
    const bench = standing().set('chipPower', 100_000).mode('starting').run(5);
    expect(bench.all()).toEqual(expect.arrayContaining(['FLOW-2', 'PUMP-1']));
  });

  it('waits for its flow where the power of chips is not known, and tells the loss of a flow that was there', () => {
    const bench = standing().bad('chipPower').mode('starting').run(30);
    bench.set('pump.running', 1).run(30);
    expect(bench.active('FLOW-2')).toBe(false);
    flows(bench).run(10).set('loop.flow', 0);
    expect(bench.secondsUntil('FLOW-2', 10)).toBe(4);
    const again = stop(bench).bad('chipPower').run(600).mode('starting').run(30);
    expect(again.active('FLOW-2')).toBe(false);
    expect(again.mode('running').run(5).active('FLOW-2')).toBe(true);
  });
});

describe('a return of power', () => {
  it('counts chips as loaded where their power is not known, as nobody took the load off', () => {
    const bench = new RuleBench({ also: ['chipPower'] }).mode('running').bad('chipPower').run(60);
    bench.mode('powerReturn').set('pump.running', 0).set('loop.flow', 0).run(5);
    expect(bench.all()).toEqual(expect.arrayContaining(['FLOW-2', 'PUMP-1']));
  });

  it('keeps a pump in alarm that does not come back, and has one of idle chips wait', () => {
    const idle = new RuleBench({ also: ['chipPower'], values: { chipPower: 0 } }).run(60);
    expect(idle.mode('powerReturn').run(1).set('pump.running', 1).run(1).active('PUMP-1')).toBe(false);
    const tripped = new RuleBench({ also: ['chipPower'], values: { chipPower: 0 } }).run(60);
    tripped.set('pump.running', 0).run(5);
    expect(tripped.mode('powerReturn').run(60).active('PUMP-1')).toBe(true);
    const waits = standing().mode('powerReturn').run(30);
    expect(waits.active('PUMP-1')).toBe(false);
  });
});

describe('facility water in a planned start', () => {
  const met: BenchOptions = { also: ['facility.flow'], values: { 'facility.flow': litres(340) } };
  const told: BenchOptions = {
    also: ['facility.flow', 'valve.command'],
    values: { 'facility.flow': litres(340), 'valve.command': 0.5 },
  };
  const shut = (options: BenchOptions): RuleBench => standing(options).set('facility.flow', 0).run(60);

  it('is not lost before it has come, where no valve tells', () => {
    const bench = starting(shut(met));
    expect(flows(bench).run(60).active('FAC-1')).toBe(false);
    bench.set('facility.flow', litres(150)).run(5).mode('running').set('chipPower', 200_000);
    expect(bench.run(60).active('FAC-1')).toBe(false);
  });

  it('is lost where it does not come although chips give off heat, and where it goes again once it ran', () => {
    const bench = starting(shut(met));
    expect(flows(bench).set('chipPower', 200_000).run(5).active('FAC-1')).toBe(true);
    const runs = flows(starting(shut(met)).set('facility.flow', litres(340))).run(700);
    expect(runs.set('facility.flow', 0).run(5).active('FAC-1')).toBe(true);
  });

  it('may come with the stroke of a valve that is told to open and whose position nobody tells', () => {
    const bench = flows(starting(shut(told)).set('valve.command', 0).run(60))
      .set('valve.command', 0.5)
      .run(1);
    bench.mode('running').set('chipPower', 200_000);
    bench.run(100, (second) => bench.set('facility.flow', litres(340) * Math.min(0.5, second / 100) ** 2));
    expect(bench.active('FAC-1')).toBe(false);
  });

  it('is lost as soon as such a valve must have opened a little and nothing flows', () => {
    const bench = flows(starting(shut(told)).set('valve.command', 0).run(60)).set('valve.command', 0.5);
    bench.mode('running').set('chipPower', 200_000);
    expect(bench.secondsUntil('FAC-1', 30)).toBe(12);
  });

  it('keeps what was kept of the flow before the stop for no start after it', () => {
    const bench = standing(met).mode('running').set('chipPower', 200_000).run(700).set('facility.flow', 0).run(10);
    expect(bench.active('FAC-1')).toBe(true);
    const again = starting(stop(bench).run(600)).set('facility.flow', litres(60)).mode('running');
    expect(again.set('chipPower', 30_000).run(60).active('FAC-1')).toBe(false);
  });
});

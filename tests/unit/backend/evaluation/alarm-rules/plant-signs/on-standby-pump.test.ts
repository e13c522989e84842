import { describe, expect, it } from 'vitest';
import { RuleBench } from '../rule-bench';

const litresPerMin = 1 / 60_000;

const missing = ['pump.inlet.pressure', 'supply.pressure', 'return.pressure', 'branch.r1.power', 'branch.r2.power'];

/** A loop that carries 8.7 K, without mode point and power of chips: its lead runs as it is ordered to, the standby stands. */
const onLead = (): RuleBench =>
  new RuleBench({
    modeInferred: true,
    without: missing,
    also: ['pump.command', 'pump.standby.running', 'facility.flow'],
    design: { supplyClassLimitC: 45 },
    values: {
      ...{ 'pump.command': 1, 'pump.running': 1, 'pump.standby.running': 0, 'vacuum.running': 1 },
      'facility.flow': 340 * litresPerMin,
    },
  }).run(600);
/** The pumps have changed over: the lead is ordered to rest, and the standby carries the loop. */
const onStandby = (): RuleBench => leadRests(onLead().set('pump.standby.running', 1).run(20)).run(600);
const leadRests = (bench: RuleBench): RuleBench => bench.set('pump.command', 0).set('pump.running', 0);
/** Neither pump runs any more, and the flow is gone. */
const standbyStops = (bench: RuleBench): RuleBench => bench.set('pump.standby.running', 0).set('loop.flow', 0).run(60);
/** Facility water is lost, and the water warms up by a kelvin every five seconds. */
const facilityLost = (bench: RuleBench): RuleBench =>
  bench.set('facility.flow', 0).run(120, (second) => {
    const supplyC = Math.min(55, 36 + second / 5);
    bench.set('supply.temperature', supplyC).set('return.temperature', supplyC + 8.7);
  });
/** The load goes: the return comes down to the supply. */
const loadGoes = (bench: RuleBench): RuleBench =>
  bench.run(120, (second) => bench.set('return.temperature', Math.max(36.8, 45 - second / 5)));

describe('a loop that the standby pump carries, without a mode point', () => {
  it('is cooled no less than by the lead: a lost facility, a warm supply and a lost flow are told', () => {
    const bench = facilityLost(onStandby());
    expect(bench.all()).toEqual(expect.arrayContaining(['FAC-1', 'TSUP-1', 'TSUP-2']));
    expect(bench.set('loop.flow', 0).run(10).active('FLOW-2')).toBe(true);
  });

  it('keeps what stands, and tells nothing new, while nothing is heard of the standby pump', () => {
    const bench = facilityLost(onStandby()).bad('pump.standby.running');
    bench.run(600);
    expect(bench.all()).toEqual(expect.arrayContaining(['FAC-1', 'TSUP-2']));
    expect(facilityLost(onStandby().bad('pump.standby.running')).active('FAC-1')).toBe(false);
  });

  it('stands as it was meant to where the load went before the standby stopped', () => {
    expect(facilityLost(standbyStops(loadGoes(onStandby()))).all()).toEqual([]);
  });
});

describe('a trip of the standby pump after an ordered change-over', () => {
  it('is a lost flow, though the lead rests as it is ordered to', () => {
    const bench = standbyStops(onStandby());
    expect(bench.alarm('FLOW-2')).toMatchObject({ active: true, priority: 1 });
    expect(bench.active('PUMP-1')).toBe(false);
    expect(facilityLost(bench).all()).toEqual(expect.arrayContaining(['FAC-1', 'FLOW-2', 'TSUP-2']));
  });

  it('lets nothing go that stood before it', () => {
    const bench = standbyStops(facilityLost(onStandby())).run(600);
    expect(bench.all()).toEqual(expect.arrayContaining(['FAC-1', 'FLOW-2', 'TSUP-2']));
  });

  it('keeps what stands, and tells nothing new, where nobody knows the heat in the water at that moment', () => {
    const bench = standbyStops(facilityLost(onStandby()).bad('return.temperature').run(5));
    expect(bench.all()).toEqual(expect.arrayContaining(['FAC-1', 'TSUP-2']));
    expect(bench.active('FLOW-2')).toBe(false);
  });

  it('is one as well where the lead is still ordered to run, whatever the water carried', () => {
    const bench = onLead().set('pump.standby.running', 1).set('pump.running', 0).run(600);
    expect(standbyStops(loadGoes(bench)).active('FLOW-2')).toBe(true);
  });

  it('is past once the lead has run again: its own command says whether it is meant to stand', () => {
    const bench = onStandby().set('pump.command', 1).set('pump.running', 1).run(20);
    bench.set('pump.standby.running', 0).run(600);
    expect(leadRests(bench).set('loop.flow', 0).run(60).active('FLOW-2')).toBe(false);
  });
});

describe('a lead that has tripped while the standby carries the loop', () => {
  it('stays in alarm when the load goes', () => {
    const bench = new RuleBench({ modeInferred: true, without: missing, also: ['pump.standby.running'] });
    bench.run(60).set('pump.standby.running', 1).set('pump.running', 0).run(10);
    expect(bench.active('PUMP-1')).toBe(true);
    expect(loadGoes(bench).active('PUMP-1')).toBe(true);
  });
});

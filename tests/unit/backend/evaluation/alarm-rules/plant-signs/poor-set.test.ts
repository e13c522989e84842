import { describe, expect, it } from 'vitest';
import { Plant, plantSite } from '../../pipeline/plant';
import { RuleBench, type BenchOptions } from '../rule-bench';

/** What a poor set of sensors has not: no command, no mode, no power of chips, no flow. */
const missing = [
  'pump.inlet.pressure',
  'supply.pressure',
  'return.pressure',
  'loop.flow',
  'branch.r1.power',
  'branch.r2.power',
  'chipPower',
];

/** A loop that carries 8.7 K, with feedback of pump and vacuum source alone. */
const poor = (options: BenchOptions = {}): RuleBench =>
  new RuleBench({ without: missing, modeInferred: true, ...options }).run(60);

const tripped = (bench: RuleBench): RuleBench => bench.set('pump.running', 0);

describe('a unit with a poor set of sensors', () => {
  it('tells the trip of its pump by the heat that the water carried, as priority 1', () => {
    const bench = tripped(poor());
    expect(bench.secondsUntil('PUMP-1', 10)).toBe(3);
    expect(bench.alarm('PUMP-1')?.priority).toBe(1);
    // Return and supply drift together in the dead pipes: the alarm stays all the same.
    bench.set('return.temperature', 36).set('supply.temperature', 36).run(3600);
    expect(bench.active('PUMP-1')).toBe(true);
  });

  it('takes a stop whose load went first for a stop', () => {
    const bench = poor();
    bench.run(180, (second) => bench.set('return.temperature', Math.max(36.8, 45 - second / 10)));
    expect(tripped(bench).run(60).active('PUMP-1')).toBe(false);
  });

  it('says nothing where a temperature was bad when the pump stopped, and lets nothing that stands go', () => {
    const bench = poor().bad('return.temperature').run(5);
    expect(tripped(bench).run(60).active('PUMP-1')).toBe(false);
    const raised = tripped(poor()).run(10);
    expect(raised.bad('return.temperature').bad('supply.temperature').run(600).active('PUMP-1')).toBe(true);
  });

  it('keeps the warm supply in alarm when the pump trips, and tells one that comes after', () => {
    const before = poor({ design: { supplyClassLimitC: 45 } })
      .set('supply.temperature', 39)
      .run(20);
    expect(before.active('TSUP-1')).toBe(true);
    expect(tripped(before).run(600).active('TSUP-1')).toBe(true);
    const after = tripped(poor({ design: { supplyClassLimitC: 45 } })).run(10);
    expect(after.set('supply.temperature', 46).run(30).active('TSUP-2')).toBe(true);
  });

  it('holds the warm supply where it is not known whether the stop was meant, and ends it where it was', () => {
    const held = poor().bad('return.temperature').run(5).set('supply.temperature', 39).run(20);
    expect(tripped(held).run(600).active('TSUP-1')).toBe(true);
    const meant = poor().set('supply.temperature', 39).set('return.temperature', 39.5).run(120);
    expect(meant.active('TSUP-1')).toBe(true);
    expect(tripped(meant).run(120).active('TSUP-1')).toBe(false);
  });

  it('tells the loss of flow of such a trip, where there is a meter', () => {
    const bench = poor({ without: missing.filter((point) => point !== 'loop.flow') });
    expect(tripped(bench).set('loop.flow', 0).run(10).alarm('FLOW-2')).toMatchObject({ active: true, priority: 1 });
  });

  it('keeps the loss of facility water in alarm when the pump trips as well', () => {
    const bench = poor({ also: ['facility.flow'], values: { 'facility.flow': 340 / 60_000 } }).run(600);
    bench.set('facility.flow', 0).run(10);
    expect(bench.active('FAC-1')).toBe(true);
    expect(tripped(bench).run(600).active('FAC-1')).toBe(true);
  });
});

describe('two units on one loop, each with a poor set', () => {
  const loops = { pair: { name: 'Pair', units: ['m1', 'm2'], unitsNeeded: 1 } };
  const pair = (): Plant =>
    new Plant(plantSite({ units: ['m1', 'm2'], points: { 'branch.*.power': null }, document: { loops } })).run(60);
  const trips = (plant: Plant): readonly (string | null)[] =>
    plant.pipeline.standing().flatMap(({ entry, unit }) => (entry === 'PUMP-1' ? [unit] : []));

  it('say nothing where one stands while the other carries the loop: it may have been put on standby', () => {
    const plant = pair();
    plant.m1.pumpRunning = false;
    expect(trips(plant.run(60))).toEqual([]);
  });

  it('say nothing as well where the other carries it with its standby pump', () => {
    const points = { 'branch.*.power': null, 'pump.standby.running': { path: 'standbyRunning' } };
    const plant = new Plant(plantSite({ units: ['m1', 'm2'], points, document: { loops } }));
    Object.assign(plant.m1, { standbyRunning: false });
    Object.assign(plant.telemetry['m2'] ?? {}, { pumpRunning: false, standbyRunning: true });
    plant.run(60);
    plant.m1.pumpRunning = false;
    expect(trips(plant.run(60))).toEqual([]);
  });

  it('tell the trip of the second, which leaves none', () => {
    const plant = pair();
    plant.m1.pumpRunning = false;
    plant.run(60);
    Object.assign(plant.telemetry['m2'] ?? {}, { pumpRunning: false });
    expect(trips(plant.run(10))).toContain('m2');
  });
});

describe('a start of Ebbline beside a pump that stands', () => {
  it('tells no trip: nobody saw the pump stop, and the water in dead pipes says nothing', () => {
    const bench = new RuleBench({ without: missing, modeInferred: true, values: { 'pump.running': 0 } });
    expect(bench.run(600).active('PUMP-1')).toBe(false);
  });
});

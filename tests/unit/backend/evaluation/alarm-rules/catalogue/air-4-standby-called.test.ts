import { describe, expect, it } from 'vitest';
import { RuleBench, type BenchOptions } from '../rule-bench';

const setPoint = 32_000;
const running = 'vacuum.standby.running';

/** Unit M: 510 L of gas room, 295 free L/min a source, which are 1 kPa a second. */
function bench(options: BenchOptions = {}, periodS = 1): RuleBench {
  const one = new RuleBench({
    unit: (unit) => ({
      ...unit,
      design: { ...unit.design, volumes: { ...unit.design.volumes, separatorGasM3: 0.51 } },
    }),
    ...options,
    also: [running, 'vacuumCapacity', ...(options.also ?? ['vacuum.available', 'separator.setPoint'])],
    values: {
      ...{ 'separator.pressure': setPoint, 'vacuum.running': 1, [running]: 0, vacuumCapacity: 295 / 60_000 },
      ...(options.values ?? { 'separator.setPoint': setPoint, 'vacuum.speed': 1, 'vacuum.available': 1 }),
    },
  });
  const { site, unitSlots } = one.pipeline;
  site.slots.periodMs[unitSlots[0]?.vacuumStandbyRunning ?? -1] = 1000 * periodS;
  return one.run(30);
}

/** Seconds until AIR-4 is raised while the separator rises from where it was; −1 where it is not. */
function raisedWithin(one: RuleBench, seconds: number, paPerS: number, from = setPoint): number {
  for (let second = 1; second <= seconds; second += 1) {
    one.set('separator.pressure', Math.min(101_000, from + paPerS * second)).run(1);
    if (one.active('AIR-4')) return second;
  }
  return -1;
}

/** A standby whose control waits so long after 4 kPa over the set point, and whose contact is read so long after its start. */
function raisedInTakeOver(one: RuleBench, paPerS: number, controlS: number, contactS: number): boolean {
  let [pressure, calledS, startS] = [setPoint, Infinity, Infinity];
  for (let second = 1; second <= 90; second += 1) {
    pressure = Math.max(setPoint, pressure + paPerS - Math.min(1, Math.max(0, second - startS) / 5) * 1000);
    if (pressure > setPoint + 4000) calledS = Math.min(calledS, second);
    startS = Math.min(startS, calledS + controlS);
    one.set('separator.pressure', pressure).set(running, second >= startS + contactS ? 1 : 0);
    if (one.run(1).active('AIR-4')) return true;
  }
  return false;
}

describe('AIR-4 while a standby source takes over as it should', () => {
  it('is not raised where its run contact is read every ten seconds', () => {
    for (const paPerS of [340, 600, 800])
      expect(raisedInTakeOver(bench({}, 10), paPerS, 6, 10), `${paPerS} Pa/s`).toBe(false);
  });

  it('is not raised where its control waits six seconds', () => {
    for (const paPerS of [340, 600, 800]) expect(raisedInTakeOver(bench(), paPerS, 6, 3), `${paPerS} Pa/s`).toBe(false);
  });

  it('waits for no slow contact where the separator runs up to ambient in seconds', () => {
    for (const paPerS of [4000, 10_000]) {
      const raised = raisedWithin(bench({}, 60), 30, paPerS);
      expect(raised, `${paPerS} Pa/s`).toBeGreaterThan(3);
      expect(raised, `${paPerS} Pa/s`).toBeLessThan(12);
    }
  });
});

describe('AIR-4 where the set point of the separator is not known', () => {
  const values = { 'vacuum.speed': 0.6, 'vacuum.available': 1 };
  const also = ['vacuum.available'];

  it('takes the place to which the pressure has risen and where it stands for the one from which it rises next', () => {
    const one = bench({ also, values });
    raisedWithin(one, 60, 100);
    expect(one.set('separator.pressure', 38_000).run(120).active('AIR-4')).toBe(false);
    one.set('vacuum.speed', 1);
    expect(raisedWithin(one, 12, 300, 38_000)).toBe(-1);
    expect(raisedWithin(one, 30, 300, 41_600)).toBeGreaterThan(10);
  });

  it('stands at ambient for as long as the pressure does', () => {
    const one = bench({ also, values: { ...values, 'vacuum.speed': 1 } });
    expect(raisedWithin(one, 60, 1500)).toBeGreaterThan(0);
    expect(one.set('separator.pressure', 101_000).run(600).active('AIR-4')).toBe(true);
  });
});

describe('AIR-4 with a standby that stands, and of which nobody knows whether it is ready', () => {
  const values = { 'separator.setPoint': setPoint };
  const unknownReserve: BenchOptions = {
    without: ['vacuum.speed', 'pump.inlet.pressure', 'supply.pressure', 'return.pressure'],
    also: ['vacuumReserveAll', 'separator.setPoint'],
    values,
  };
  const constant = (more: BenchOptions = {}): RuleBench =>
    bench({ ...unknownReserve, ...more }).bad('vacuumReserveAll');

  it('waits until it is called and has failed to start, and names it', () => {
    expect(raisedWithin(constant(), 50, 80)).toBe(-1);
    const one = constant();
    expect(raisedWithin(one, 90, 80)).toBeGreaterThan(60);
    expect(one.detail('AIR-4')).toMatch(/, the lead source is full and the standby is not seen to run\.$/);
  });

  it('does the same where the word of it is bad, and waits for none that is known not to be ready', () => {
    const also = [...(unknownReserve.also ?? []), 'vacuum.available'];
    const bad = constant({ also, values: { ...values, 'vacuum.available': 1 } }).bad('vacuum.available');
    expect(raisedWithin(bad, 50, 80)).toBe(-1);
    const missing = constant({ also, values: { ...values, 'vacuum.available': 0 } });
    expect(raisedWithin(missing, 50, 80)).toBeLessThan(20);
    expect(missing.detail('AIR-4')).toMatch(/, all sources full\.$/);
  });
});

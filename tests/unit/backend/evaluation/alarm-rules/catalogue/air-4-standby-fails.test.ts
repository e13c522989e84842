import { describe, expect, it } from 'vitest';
import { RuleBench } from '../rule-bench';

const free = 1 / 60_000;
const setPoint = 32_000;

/** Lead at full speed, standby ready: it is called at 4 kPa over the set point (usual step, common practice, no source). */
function bench(values: Readonly<Record<string, number>> = {}, also: readonly string[] = []): RuleBench {
  return new RuleBench({
    also: ['vacuum.available', 'vacuum.standby.running', 'separator.setPoint', ...also],
    values: {
      ...{ 'separator.pressure': setPoint, 'separator.setPoint': setPoint, 'vacuum.speed': 1, 'vacuum.running': 1 },
      ...{ 'vacuum.available': 1, 'vacuum.standby.running': 0 },
      ...values,
    },
  }).run(30);
}
/** Seconds until AIR-4 is raised while the separator rises from its set point to ambient; −1 where it is not. */
function raisedWithin(one: RuleBench, seconds: number, paPerS: number): number {
  for (let second = 1; second <= seconds; second += 1) {
    one.set('separator.pressure', Math.min(101_000, setPoint + paPerS * second)).run(1);
    if (one.active('AIR-4')) return second;
  }
  return -1;
}

describe('AIR-4 with a standby that is ready and does not start', () => {
  it('is raised in some seconds after it ought to have been called, and says so', () => {
    const one = bench();
    const raised = raisedWithin(one, 40, 1500);
    // Over 36 kPa from the third second on, eight seconds to start and two readings of the contact, three of delay.
    expect(raised).toBeGreaterThanOrEqual(15);
    expect(raised).toBeLessThan(19);
    expect(one.detail('AIR-4')).toMatch(/, the lead source is full and the standby is not seen to run\.$/);
  });

  it('stands while the separator stays at ambient, and ends as it is drawn down', () => {
    const one = bench();
    raisedWithin(one, 60, 1500);
    expect(one.set('separator.pressure', 101_000).run(120).active('AIR-4')).toBe(true);
    one.run(40, (second) => void one.set('separator.pressure', 101_000 - 1500 * second));
    expect(one.active('AIR-4')).toBe(false);
  });

  it('waits for one that is not yet called, however long the pressure rises', () => {
    const one = bench();
    expect(raisedWithin(one, 40, 90)).toBe(-1);
    expect(raisedWithin(bench(), 80, 90)).toBeGreaterThan(50);
  });

  it('asks for no load shed where the standby starts in time and takes the pressure back', () => {
    const one = bench();
    expect(raisedWithin(one, 5, 1000)).toBe(-1);
    for (let second = 0; second < 4; second += 1) expect(raisedWithin(one, 1, 5000 + 500 * second)).toBe(-1);
    one.set('vacuum.standby.running', 1).set('vacuum.available', 0);
    one.run(60, (second) => {
      one.set('separator.pressure', Math.max(setPoint, 38_500 - 300 * second));
      expect(one.active('AIR-4')).toBe(false);
    });
  });

  it('takes one that is called again after the pressure was back for one that may start', () => {
    const one = bench();
    expect(raisedWithin(one, 7, 1000)).toBe(-1);
    one.set('separator.pressure', setPoint).run(60);
    expect(raisedWithin(one, 7, 1000)).toBe(-1);
  });

  it('leaves out what the standby would carry where the sources tell no speed', () => {
    const values = { vacuumCapacity: 295 * free, vacuumReserveAll: 200 * free };
    const source = new RuleBench({
      without: ['vacuum.speed', 'pump.inlet.pressure', 'supply.pressure', 'return.pressure'],
      also: ['vacuum.available', 'vacuum.standby.running', 'separator.setPoint'],
      values: {
        ...{ 'separator.pressure': setPoint, 'separator.setPoint': setPoint, 'vacuum.running': 1 },
        ...{ 'vacuum.available': 1, 'vacuum.standby.running': 0 },
        ...values,
      },
    }).run(30);
    expect(raisedWithin(source, 30, 1000)).toBeGreaterThan(8);
  });
});

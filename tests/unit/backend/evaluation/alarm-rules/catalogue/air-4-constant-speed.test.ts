import { describe, expect, it } from 'vitest';
import { RuleBench } from '../rule-bench';

/** Two sources without a speed, both at work, and a gas load that no point tells. */
function bench(values: Readonly<Record<string, number>> = {}): RuleBench {
  return new RuleBench({
    without: ['vacuum.speed', 'pump.inlet.pressure', 'supply.pressure', 'return.pressure'],
    also: ['vacuum.available', 'vacuum.standby.running', 'vacuumReserveAll'],
    values: {
      ...{ 'separator.pressure': 32_000, 'vacuum.running': 1, 'vacuum.standby.running': 1, 'vacuum.available': 1 },
      ...values,
    },
  })
    .bad('vacuumReserveAll')
    .run(60);
}
/** Seconds until AIR-4 is raised while the separator rises to ambient; −1 where it is not. */
function raisedWithin(one: RuleBench, seconds: number, paPerS: number): number {
  for (let second = 1; second <= seconds; second += 1) {
    one.set('separator.pressure', Math.min(101_000, 32_000 + paPerS * second)).run(1);
    if (one.active('AIR-4')) return second;
  }
  return -1;
}

describe('AIR-4 of sources that tell no speed, where nobody knows what they have left', () => {
  it('is raised in seconds while lead and standby both run, and stands at ambient', () => {
    const one = bench();
    const raised = raisedWithin(one, 60, 1500);
    expect(raised).toBeGreaterThan(3);
    expect(raised).toBeLessThan(8);
    expect(raisedWithin(one, 60, 1500)).toBe(1);
    expect(one.set('separator.pressure', 101_000).run(60).active('AIR-4')).toBe(true);
  });

  it('is raised by a rise that goes on where the lead runs alone, and not by water that sloshes', () => {
    const alone = { 'vacuum.standby.running': 0, 'vacuum.available': 0 };
    expect(raisedWithin(bench(alone), 60, 1500)).toBeGreaterThan(8);
    const sloshes = bench(alone);
    expect(raisedWithin(sloshes, 6, 150)).toBe(-1);
    expect(sloshes.run(60).active('AIR-4')).toBe(false);
  });

  it('holds where it is not known whether the standby or the lead runs', () => {
    for (const point of ['vacuum.standby.running', 'vacuum.running'])
      expect(raisedWithin(bench().bad(point), 60, 1500), point).toBe(-1);
  });

  it('holds where the sources are held by speed and their speed is lost', () => {
    const one = new RuleBench({
      also: ['vacuum.standby.running', 'vacuumReserveAll'],
      values: { 'separator.pressure': 32_000, 'vacuum.running': 1, 'vacuum.standby.running': 1, 'vacuum.speed': 1 },
    });
    expect(raisedWithin(one.bad('vacuumReserveAll').bad('vacuum.speed').run(30), 60, 1500)).toBe(-1);
  });
});

import { describe, expect, it } from 'vitest';
import type { BenchOptions } from '../rule-bench';
import { RuleBench } from '../rule-bench';

const free = 1 / 60_000;
const asItRuns = {
  ...{ 'separator.pressure': 32_000, 'vacuum.speed': 0.9, 'vacuum.running': 1, 'vacuum.command': 1 },
  ...{ 'vacuum.standby.running': 0, 'vacuum.available': 1 },
};
const tripped = { 'vacuum.running': 0, 'vacuum.speed': 0 };
const deadStandby = { 'vacuum.available': 0 };
const onStandby = { 'vacuum.standby.running': 1 };

/** Unit M: 510 L of gas room, 295 free L/min a source, which are 1 kPa a second. */
function bench(values: Readonly<Record<string, number>> = {}, options: BenchOptions = {}): RuleBench {
  const also = ['vacuum.command', 'vacuum.standby.running', 'vacuum.available', 'vacuumCapacity', 'vacuumReserve'];
  const one = new RuleBench({
    also,
    values: { ...asItRuns, vacuumCapacity: 295 * free },
    unit: (unit) => ({
      ...unit,
      design: { ...unit.design, volumes: { ...unit.design.volumes, separatorGasM3: 0.51 } },
    }),
    ...options,
  }).run(30);
  return put(one, values).bad('vacuumReserve');
}
function put(one: RuleBench, values: Readonly<Record<string, number>>): RuleBench {
  for (const [point, value] of Object.entries(values)) one.set(point, value);
  return one;
}
/** Seconds until AIR-4 is raised while the separator rises; −1 where it is not. */
function raisedWithin(one: RuleBench, seconds: number, paPerS: number, from = 32_000): number {
  for (let second = 1; second <= seconds; second += 1) {
    one.set('separator.pressure', from + paPerS * second).run(1);
    if (one.active('AIR-4')) return second;
  }
  return -1;
}
/** What comes in, known by what one source has left, free L/min. */
const coming = (one: RuleBench, litres: number): RuleBench => one.set('vacuumReserve', (295 - litres) * free);

describe('AIR-4 while the lead source has tripped', () => {
  it('is raised where the separator goes on rising on the standby, after VSRC-1, which stays the first thing told', () => {
    const one = bench({ ...tripped, ...onStandby }).run(15);
    expect(one.alarm('VSRC-1')).toMatchObject({ active: true, foldedUnder: null });
    const raised = raisedWithin(one, 20, 1000);
    expect(raised).toBeGreaterThan(7);
    expect(raised).toBeLessThan(17);
    expect(one.alarm('AIR-4')).toMatchObject({ priority: 1 });
    expect(one.alarm('VSRC-1')?.foldedUnder).toBeNull();
    expect(one.detail('AIR-4')).toMatch(/, the lead source stands and no other has anything left\.$/);
  });

  it('is raised as soon as ever where more collects than the standby could carry', () => {
    expect(raisedWithin(bench({ ...tripped, ...onStandby }).run(15), 10, 2600)).toBeLessThan(8);
  });

  it('is raised with lead and standby both dead, and stands at ambient until the pressure is drawn down', () => {
    const one = bench({ ...tripped, ...deadStandby });
    expect(raisedWithin(one, 20, 1000)).toBeGreaterThan(3);
    expect(coming(one, 0).run(60).active('AIR-4')).toBe(true);
    put(one, { ...onStandby, 'vacuum.available': 1 });
    one.run(40, (second) => void one.set('separator.pressure', 52_000 - 1000 * second));
    expect(one.active('AIR-4')).toBe(false);
  });

  it('is not raised while a standby waits that could start, and is once that has failed to', () => {
    expect(raisedWithin(bench(tripped), 8, 1000)).toBe(-1);
    const one = bench(tripped);
    expect(raisedWithin(one, 20, 1000)).toBeGreaterThan(10);
    expect(one.detail('AIR-4')).toMatch(/, the lead source stands and the standby is not seen to run\.$/);
  });

  it('is not raised by a hose that the standby runs up to carry, nor by one that it is known to carry', () => {
    const one = bench({ ...tripped, ...onStandby }).run(15);
    expect(raisedWithin(one, 5, 500)).toBe(-1);
    expect(raisedWithin(one, 20, -100, 34_500)).toBe(-1);
    expect(raisedWithin(coming(bench({ ...tripped, ...onStandby }).run(15), 160), 20, 500)).toBe(-1);
    expect(raisedWithin(coming(bench({ ...tripped, ...onStandby }).run(15), 290), 20, 500)).toBeGreaterThan(3);
  });

  it('leaves the small leak of a sound loop to VSRC-1, however fast a small separator rises of it', () => {
    expect(raisedWithin(coming(bench({ ...tripped, ...deadStandby }), 5), 60, 570)).toBe(-1);
    expect(raisedWithin(coming(bench({ ...tripped, ...deadStandby }), 60), 60, 570)).toBeGreaterThan(3);
  });

  it('holds where it is not known whether the standby runs, or whether the lead is wanted', () => {
    for (const point of ['vacuum.standby.running', 'vacuum.command']) {
      const lost = { ...tripped, ...deadStandby };
      expect(raisedWithin(bench(lost).bad(point), 20, 1000), point).toBe(-1);
      const one = bench(lost);
      expect(raisedWithin(one, 20, 1000)).toBeGreaterThan(0);
      expect(one.bad(point).run(30).active('AIR-4'), point).toBe(true);
    }
  });
});

describe('AIR-4 while the lead source stands on purpose', () => {
  const stopped = { ...tripped, ...deadStandby, 'vacuum.command': 0 };

  it('is not raised by a source that is ordered to rest, nor in a mode in which nobody wants a vacuum', () => {
    expect(raisedWithin(bench(stopped), 20, 1000)).toBe(-1);
    for (const mode of ['off', 'vented', 'draining'] as const) {
      expect(raisedWithin(bench({ ...tripped, ...deadStandby }).mode(mode), 20, 1000), mode).toBe(-1);
      expect(
        raisedWithin(
          bench({ ...tripped, ...onStandby })
            .mode(mode)
            .run(15),
          20,
          1000,
        ),
        mode,
      ).toBe(-1);
    }
  });

  it('is not raised as the power of the unit fails and water comes back into the separator', () => {
    expect(raisedWithin(bench({ ...tripped, ...deadStandby, 'pump.running': 0 }), 20, 500)).toBe(-1);
  });

  it('is not raised by a change-over of the sources, and is where the separator runs up on the one that took over', () => {
    const one = bench(onStandby).run(15);
    put(one, { ...tripped, 'vacuum.command': 0 });
    expect(raisedWithin(one, 6, 150)).toBe(-1);
    expect(raisedWithin(one, 60, 2, 32_900)).toBe(-1);
    expect(raisedWithin(one, 20, 1000, 33_000)).toBeGreaterThan(3);
  });

  it('is not raised by the gas that alternating tanks bring into a separator without a source', () => {
    expect(raisedWithin(bench({ ...tripped, ...deadStandby }, { shape: 'b' }), 30, 370)).toBe(-1);
  });
});

describe('AIR-4 of a unit that does not tell of its standby', () => {
  const unseen = (count: number, known: number): number => {
    const source = { control: 'speed' as const, controlStated: true as const, sealWaterC: null };
    const one = bench(
      {},
      {
        vacuumSource: { ...source, count, pressurePa: [5000, 101_300], suctionM3PerS: [0.02, 0.02] },
        also: ['vacuumCapacity', 'vacuumReserve'],
        values: { 'separator.pressure': 32_000, 'vacuum.speed': 0.9, 'vacuum.running': 1, vacuumCapacity: 295 * free },
      },
    );
    return raisedWithin(coming(put(one, tripped), known), 25, 500);
  };

  it('counts on one that may run unseen, where there are several', () => {
    expect(unseen(2, 160)).toBe(-1);
    expect(unseen(2, 300)).toBeGreaterThan(3);
    expect(unseen(1, 160)).toBeGreaterThan(3);
  });
});

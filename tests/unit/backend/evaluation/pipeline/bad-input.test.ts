import { describe, expect, it } from 'vitest';
import { groupEntries, unitEntries } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import { badReasons, ChainBench } from './chain-bench';

/** Well beyond an off-delay, s: the hour of those that plan service is left out. */
const wellBeyond = (offDelayMs: number): number => Math.min(1000, offDelayMs / 1000 + 90);

/** What stands on no measured point. PERMIT-1: ends with the permit; COM-1 and INS-1 are about the points themselves. */
const ofNoPoint = ['PERMIT-1', 'COM-1', 'INS-1'];
const entries = [...unitEntries, ...groupEntries].filter(({ id }) => !ofNoPoint.includes(id));

describe('a bad input clears nothing', () => {
  it.each(entries.map(({ id, feeds, defaults }) => [id, feeds, wellBeyond(defaults.offDelayMs)] as const))(
    '%s stands while its inputs are bad, right after a restart and after ten minutes of good ones',
    (id, feeds, seconds) => {
      const cold = new ChainBench().bad(feeds);
      const names = cold.restore(id);
      if (names.length === 0) return;
      expect(cold.run(seconds).activeNames()).toEqual(expect.arrayContaining([...names]));

      const warm = new ChainBench().run(640);
      warm.restore(id);
      expect(warm.bad(feeds).run(seconds).activeNames()).toEqual(expect.arrayContaining([...names]));
    },
    60_000,
  );
});

describe('a plate whose power is lost', () => {
  const hot = (): ChainBench => new ChainBench().run(10).set('plate.p2.power', 700).run(30);

  it('keeps the boiling at its wall in alarm, as another wall takes its place, and ends it when it is seen again', () => {
    const bench = hot();
    expect(bench.isActive('BOIL-1')).toBe(true);
    bench.bad(['plate.<id>.power']).run(120);
    expect(bench.isActive('BOIL-1')).toBe(true);
    bench.set('plate.p1.power', 300).set('plate.p2.power', 300).run(30);
    expect(bench.isActive('BOIL-1')).toBe(false);
  });
});

describe('a restart clears nothing by itself', () => {
  it.each(badReasons)(
    'lets all that stood stand for a quarter of an hour in which nothing usable arrives: all %s',
    (reason) => {
      const bench = new ChainBench().allBad(reason);
      const names = bench.restore().filter((name) => !name.includes('PERMIT-1'));
      expect(names.length).toBeGreaterThan(40);
      const active = bench.run(1000).activeNames();
      expect(names.filter((name) => !active.includes(name))).toEqual([]);
    },
    60_000,
  );
});

describe('a plant all of whose points are lost while it runs', () => {
  it.each(badReasons.filter((reason) => reason !== 'notReceived'))(
    'lets all that stood stand for a quarter of an hour: all %s',
    (reason) => {
      const bench = new ChainBench().run(640);
      const names = bench.restore().filter((name) => !name.includes('PERMIT-1'));
      const active = bench.allBad(reason).run(1000).activeNames();
      expect(names.filter((name) => !active.includes(name))).toEqual([]);
    },
    60_000,
  );
});

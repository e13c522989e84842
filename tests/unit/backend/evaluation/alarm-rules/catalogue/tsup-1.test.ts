import { describe, expect, it } from 'vitest';
import { RuleBench, type BenchOptions } from '../rule-bench';

/** The site file states 36.3 °C; the supply is where the unit itself is told to hold it. */
const heldAt = (setPointC: number, options: BenchOptions = {}): RuleBench =>
  new RuleBench({
    also: ['supply.setPoint'],
    ...options,
    values: { 'supply.setPoint': setPointC, 'supply.temperature': setPointC },
  }).run(60);

const set = (bench: RuleBench, setPointC: number): RuleBench => bench.set('supply.setPoint', setPointC);

/** The supply goes to a new temperature by a kelvin a minute. */
function goTo(bench: RuleBench, from: number, to: number): RuleBench {
  const steps = Math.abs(to - from) * 60;
  return bench.run(steps + 1, (second) => bench.set('supply.temperature', from + ((to - from) * second) / steps));
}

/** Its set point is a point that comes every so many seconds, and has not come yet. */
function neverHeard(periodS: number, options: BenchOptions = {}): RuleBench {
  const bench = new RuleBench({ also: ['supply.setPoint'], ...options }).bad('supply.setPoint');
  const { site, unitSlots } = bench.pipeline;
  site.slots.periodMs[unitSlots[0]?.supplySetPoint ?? -1] = periodS * 1000;
  return bench;
}

describe('TSUP-1 of a unit that tells its set point', () => {
  it('is not raised where people raised the set point against condensation and the supply follows', () => {
    const bench = set(heldAt(36.3), 40);
    expect(goTo(bench, 36.3, 40).run(600).active('TSUP-1')).toBe(false);
    bench.set('supply.temperature', 42.1).run(11);
    expect(bench.alarm('TSUP-1')).toMatchObject({ active: true, limit: 42, priority: 2 });
  });

  it('clears once the set point is raised to where the supply stands', () => {
    const bench = heldAt(30).set('supply.temperature', 34).run(600);
    expect(bench.active('TSUP-1')).toBe(true);
    expect(set(bench, 34).run(62).active('TSUP-1')).toBe(false);
  });

  it('is raised where the set point was lowered and the supply stays behind', () => {
    const bench = set(heldAt(36.5), 30);
    // 0.5 K/min: the limit passes 36.5 °C after four minutes.
    expect(bench.run(230).active('TSUP-1')).toBe(false);
    expect(bench.run(30).active('TSUP-1')).toBe(true);
    expect(bench.set('supply.temperature', 32.5).run(900).active('TSUP-1')).toBe(true);
    expect(bench.set('supply.temperature', 31).run(120).active('TSUP-1')).toBe(false);
  });

  it('is not raised by a loop that follows a lowered set point', () => {
    const bench = set(heldAt(40), 30);
    expect(goTo(bench, 40, 30).run(1800).active('TSUP-1')).toBe(false);
  });

  it('goes on by the last one that was told while it can not be read, and by the site file where none ever was', () => {
    const bench = heldAt(40).bad('supply.setPoint').run(1800);
    expect(bench.active('TSUP-1')).toBe(false);
    const never = neverHeard(1).set('supply.temperature', 38.5).run(61);
    expect(never.run(11).alarm('TSUP-1')).toMatchObject({ active: true, limit: 38.3 });
  });

  it('has a limit where the site file states no set point', () => {
    const bench = heldAt(33, { design: { supplySetPointC: null } })
      .set('supply.temperature', 35.5)
      .run(11);
    expect(bench.alarm('TSUP-1')).toMatchObject({ active: true, limit: 35 });
  });
});

describe('TSUP-1 by the rise of a supply whose set point is told', () => {
  it.each([15, 60])('is not raised while it goes up to a set point that people raised, by %i s', (tauS) => {
    const bench = set(heldAt(36), 40);
    for (let second = 0; second < 300; second += 1) {
      bench.set('supply.temperature', 40 - 4 * Math.exp(-second / tauS)).run(1);
      expect(bench.active('TSUP-1'), `after ${String(second)} s`).toBe(false);
    }
  });

  it('is not raised where a fast loop runs over its new set point by a little', () => {
    const bench = set(heldAt(36), 40);
    const [decay, turn] = [0.07, 0.0714];
    for (let second = 0; second < 200; second += 1) {
      const swing = Math.cos(turn * second) + (decay / turn) * Math.sin(turn * second);
      bench.set('supply.temperature', 40 - 4 * Math.exp(-decay * second) * swing).run(1);
      expect(bench.active('TSUP-1'), `after ${String(second)} s`).toBe(false);
    }
  });

  it('tells facility water that is lost as soon as where no set point is told', () => {
    const seconds = (bench: RuleBench): number => {
      for (let second = 1; second < 60; second += 1) {
        bench.set('supply.temperature', Math.min(38, 36 + 0.1 * second)).run(1);
        if (bench.active('TSUP-1')) return second;
      }
      return -1;
    };
    const untold = new RuleBench({ values: { 'supply.temperature': 36 } }).run(60);
    expect(seconds(heldAt(36))).toBe(seconds(untold));
    expect(seconds(heldAt(36))).toBeGreaterThan(0);
  });

  it('ends by its rise once the set point is raised above the supply', () => {
    const bench = heldAt(36);
    bench.run(30, (second) => bench.set('supply.temperature', 36 + second / 20));
    expect(bench.alarm('TSUP-1')).toMatchObject({ active: true, unitOfMeasure: 'K/s' });
    set(bench, 44).run(90, (second) => bench.set('supply.temperature', 37.5 + second / 20));
    expect(bench.active('TSUP-1')).toBe(false);
  });
});

describe('TSUP-1 of a unit whose set point was not heard yet', () => {
  it.each([
    [1, 50],
    [60, 170],
  ])('does not judge by the site file before a set point told every %i s had its time', (periodS, heardAfterS) => {
    const bench = neverHeard(periodS).set('supply.temperature', 40);
    expect(bench.run(heardAfterS).active('TSUP-1')).toBe(false);
    expect(set(bench, 40).run(600).active('TSUP-1')).toBe(false);
  });

  it('judges by the site file once it had its time', () => {
    expect(neverHeard(60).set('supply.temperature', 40).run(170).run(25).active('TSUP-1')).toBe(true);
  });

  it('tells a fast rise meanwhile', () => {
    const bench = neverHeard(60);
    bench.run(50, (second) => bench.set('supply.temperature', 36.3 + second / 15));
    expect(bench.active('TSUP-1')).toBe(true);
  });

  it('ends nothing meanwhile', () => {
    const bench = neverHeard(60, { design: { supplySetPointC: 60 } });
    bench.run(50, (second) => bench.set('supply.temperature', 36.3 + second / 15));
    expect(bench.run(120).active('TSUP-1')).toBe(true);
    expect(bench.run(90).active('TSUP-1')).toBe(false);
  });
});

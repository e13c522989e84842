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
    const never = new RuleBench({ also: ['supply.setPoint'] }).bad('supply.setPoint').set('supply.temperature', 38.5);
    expect(never.run(11).alarm('TSUP-1')).toMatchObject({ active: true, limit: 38.3 });
  });

  it('has a limit where the site file states no set point', () => {
    const bench = heldAt(33, { design: { supplySetPointC: null } })
      .set('supply.temperature', 35.5)
      .run(11);
    expect(bench.alarm('TSUP-1')).toMatchObject({ active: true, limit: 35 });
  });
});

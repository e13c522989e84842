import { describe, expect, it } from 'vitest';
import { RuleBench } from '../rule-bench';

const lpm = 1 / 60_000;
const racks = ['r1', 'r2', 'r3'];

/** Rack r1 is valved off; its meter reads a few tenths of a litre, as meters do at no flow (common practice, no source). */
function bench(shape: 'a' | 'b'): RuleBench {
  const hose = { hoseBoreM: 0.008, openingDischargeCoefficient: 0.7 };
  const one = new RuleBench({ shape, branches: racks, design: hose, values: { gasLoad: 3 * lpm } });
  for (const rack of racks) {
    one.set(`branch.${rack}.flow`, (rack === 'r1' ? 0.4 : 43) * lpm);
    one.set(`branch.${rack}.return.pressure`, rack === 'r1' ? 90_000 : 43_000);
  }
  return one.run(30);
}

const drops = (one: RuleBench): RuleBench => one.set('branch.r1.flow', 0.1 * lpm);

describe('a rack that is valved off, whose meter drops from next to nothing to nothing', () => {
  it('is not named by air that comes in where no rack shows it', () => {
    const one = drops(bench('a'))
      .set('gasLoad', 60 * lpm)
      .run(5);
    expect(one.alarm('AIR-1')).toMatchObject({ active: true, where: null });
  });

  it('leaves the rack that shows it to be named', () => {
    const one = drops(bench('a'))
      .set('gasLoad', 60 * lpm)
      .set('branch.r3.flow', 30 * lpm)
      .run(5);
    expect(one.alarm('AIR-1')).toMatchObject({ active: true, where: 'Rack r3' });
  });

  it('makes no opening of a change-over that lifts the others', () => {
    const one = drops(bench('b'));
    for (const rack of ['r2', 'r3']) one.set(`branch.${rack}.return.pressure`, 45_500);
    one.set('branch.r1.return.pressure', 92_500).run(10);
    expect(one.active('AIR-1')).toBe(false);
  });

  it('takes none of the limit from a small opening elsewhere', () => {
    const one = drops(bench('a'));
    one
      .set('branch.r1.return.pressure', 88_000)
      .set('gasLoad', 45 * lpm)
      .run(5);
    expect(one.alarm('AIR-1')).toMatchObject({ active: true });
  });
});

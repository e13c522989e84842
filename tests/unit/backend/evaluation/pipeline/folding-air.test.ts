import { describe, expect, it } from 'vitest';
import { foldsUnder } from '../../../../../backend/src/evaluation/alarm-rules/folding';
import { RuleBench } from '../alarm-rules/rule-bench';

describe('an opening that the sources do not carry', () => {
  const values = {
    'vacuum.speed': 1,
    'vacuum.running': 1,
    'separator.pressure': 32_000,
    gasLoad: 0,
    chipPower: 2e5,
  };
  const risen = (second: number): number => 32_000 + 2000 * (second + 1);

  it('is one alarm, the most urgent: the opening and the lost flow fold under it, and come out again after it', () => {
    const bench = new RuleBench({ values }).run(30);
    bench.set('gasLoad', 0.02).set('loop.flow', 0);
    bench.run(12, (second) => void bench.set('separator.pressure', risen(second)));
    expect(bench.alarm('AIR-4')).toMatchObject({ active: true, priority: 1, foldedUnder: null });
    for (const entry of ['AIR-1', 'FLOW-2'])
      expect(bench.alarm(entry)).toMatchObject({ active: true, foldedUnder: 'm1:AIR-4' });
    bench.run(30, (second) => void bench.set('separator.pressure', 56_000 - 800 * (second + 1)));
    expect(bench.alarm('AIR-4')?.active).toBe(false);
    for (const entry of ['AIR-1', 'FLOW-2'])
      expect(bench.alarm(entry)).toMatchObject({ active: true, foldedUnder: null });
  });

  it('hides no water that is found, and no margin that is gone', () => {
    expect(foldsUnder['WATER-1']).toBeUndefined();
    expect(foldsUnder['MARGIN-2']).toBeUndefined();
  });
});

import { describe, expect, it } from 'vitest';
import { stepsCross } from '../../../../../../backend/src/evaluation/alarm-rules/settings/two-steps';

const limits = (values: Readonly<Record<string, number>>) =>
  new Map(Object.entries(values).map(([id, limit]) => [id, { limit }]));

describe('the two steps of an alarm', () => {
  it('do not cross as the catalogue has them', () => {
    for (const id of ['MARGIN-1', 'BOIL-1', 'DEW-1', 'FIL-1'] as const) expect(stepsCross(id, new Map())).toBeNull();
  });

  it.for([
    ['MARGIN-1', 'MARGIN-2', 3000, 2000, true],
    ['MARGIN-1', 'MARGIN-2', 2000, 2000, false],
    ['MARGIN-1', 'MARGIN-2', 1000, 2000, false],
    ['DEW-1', 'DEW-2', 3, 1, true],
    ['DEW-1', 'DEW-2', 1, 3, false],
    ['FIL-1', 'FIL-2', 2, 3, true],
    ['FIL-1', 'FIL-2', 4, 3, false],
  ] as const)(
    '%s and %s at %d and %d: in order is %s, whichever of them is set',
    ([first, second, one, other, fine]) => {
      const at = limits({ [first]: one, [second]: other });
      for (const id of [first, second]) {
        const wrong = stepsCross(id, at);
        if (fine) expect(wrong).toBeNull();
        else expect(wrong).toContain(`that of ${second}`);
      }
    },
  );

  it('are asked of no entry that has one step only', () => {
    expect(stepsCross('AIR-1', limits({ 'MARGIN-1': -1 }))).toBeNull();
  });
});

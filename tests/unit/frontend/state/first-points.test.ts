import type { UnitList } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { neediest } from '../../../../frontend/src/state/first-points';

const unit = (id: string, worstPriority: 1 | 2 | 3 | null, standingAlarms = 0): UnitList['units'][number] => ({
  id,
  hall: 'east',
  name: id,
  mode: 'running',
  modeKnown: true,
  worstPriority,
  standingAlarms,
  age: 1,
});

describe('the unit that needs a person most', () => {
  it('has the worst alarm, then the most of them', () => {
    expect(neediest([unit('a', null), unit('b', 3, 5), unit('c', 1, 1), unit('d', 2, 9)])).toBe('c');
    expect(neediest([unit('a', 2, 1), unit('b', 2, 3), unit('c', 2, 3)])).toBe('b');
  });

  it('is the first where nobody is needed, and none of no units', () => {
    expect(neediest([unit('a', null), unit('b', null)])).toBe('a');
    expect(neediest([])).toBeNull();
  });
});

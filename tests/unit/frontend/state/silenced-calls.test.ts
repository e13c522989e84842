import type { CallingAlarm } from '@ebbline/shared/contract/live-feed';
import { describe, expect, it } from 'vitest';
import { callOf, heardPriority } from '../../../../frontend/src/state/silenced-calls';

const call = (id: string, priority: 1 | 2 | 3, since = '2031-05-06T07:08:09.000Z'): CallingAlarm => ({
  ...{ id, priority, since, unit: 'e1', title: id, where: null },
});

describe('which priority is heard', () => {
  it('is none of nothing, and the most urgent of several', () => {
    expect(heardPriority([], new Set())).toBeNull();
    expect(heardPriority([call('a', 3), call('b', 1), call('c', 2)], new Set())).toBe(1);
  });

  it('is the most urgent of those that were not silenced', () => {
    const [a, b] = [call('a', 1), call('b', 3)];
    expect(heardPriority([a, b], new Set([callOf(a)]))).toBe(3);
    expect(heardPriority([a, b], new Set([a, b].map(callOf)))).toBeNull();
  });

  it('is heard again of an alarm that calls anew', () => {
    const again = call('a', 1, '2031-05-06T07:20:00.000Z');
    expect(heardPriority([again], new Set([callOf(call('a', 1))]))).toBe(1);
  });
});

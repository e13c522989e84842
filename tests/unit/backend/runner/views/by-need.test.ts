import { describe, expect, it } from 'vitest';
import type { AlarmRecord } from '../../../../../backend/src/evaluation/pipeline/outputs';
import { byNeed } from '../../../../../backend/src/runner/views/to-alarm';

const shown = (alarm: string, changed: Partial<AlarmRecord>) => ({
  record: {
    alarm,
    state: 'unacknowledged',
    active: true,
    priority: 2,
    sinceMs: 1000,
    foldedUnder: null,
    ...changed,
  } as AlarmRecord,
  recorded: true,
});

describe('the alarm that most needs a person', () => {
  it('is of the highest priority, still so, not seen, not folded, and the oldest, in this order', () => {
    const order = [
      shown('first', { priority: 1, state: 'acknowledged' }),
      shown('oldest', { sinceMs: 500 }),
      shown('younger', {}),
      shown('folded', { foldedUnder: 'first' }),
      shown('seen', { state: 'acknowledged' }),
      shown('gone', { state: 'returnedUnacknowledged', active: false, sinceMs: 0 }),
      shown('mild', { priority: 3 }),
    ];
    const sorted = [...order].reverse().sort(byNeed);
    expect(sorted.map(({ record }) => record.alarm)).toEqual(order.map(({ record }) => record.alarm));
  });
});

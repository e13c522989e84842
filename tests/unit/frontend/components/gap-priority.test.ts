import { describe, expect, it } from 'vitest';
import { gapPriority } from '../../../../frontend/src/components/gap-priority';
import { anAlarm } from '../../../screens/fixtures/builders';

describe('the priority that marks a gap', () => {
  it('is that of the alarm that the gap raised', () => {
    expect(gapPriority(anAlarm('a', { entry: 'MARGIN-2', priority: 1 }), 'right')).toBe(1);
    expect(gapPriority(anAlarm('a', { entry: 'BOIL-1', priority: 1 }), 'left')).toBe(1);
  });

  it('is not borrowed from an alarm about something else', () => {
    expect(gapPriority(anAlarm('a', { entry: 'WATER-1', priority: 1 }), 'right')).toBe(2);
    expect(gapPriority(anAlarm('a', { entry: 'MARGIN-2', priority: 1 }), 'left')).toBe(2);
    expect(gapPriority(null, 'left')).toBe(2);
  });
});

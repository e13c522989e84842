import { describe, expect, it } from 'vitest';
import { clockDay, clockTime } from '../../../../../../backend/src/evaluation/alarm-rules/details/clock-time';

const nowMs = Date.UTC(2026, 2, 1, 14, 5);

describe('a moment on the clock of the site', () => {
  it('is hour and minute, with its day in front where that is another', () => {
    expect(clockTime(nowMs, 'UTC')).toBe('14:05 UTC');
    expect(clockDay(nowMs, nowMs, 'UTC')).toBe('14:05 UTC');
    expect(clockDay(nowMs + 86_400_000, nowMs, 'UTC')).toBe('2026-03-02 14:05 UTC');
  });

  // What is worked out from a rate that is next to nothing lies beyond what a date can hold.
  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e17, -1e17])(
    'is said not to be known at %d ms, and throws nothing',
    (ms) => {
      expect(clockTime(ms, 'UTC')).toBe('a time not known');
      expect(clockDay(ms, nowMs, 'UTC')).toBe('a time not known');
    },
  );
});

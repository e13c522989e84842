import { describe, expect, it } from 'vitest';
import { formatClock, formatMoment, formatSince } from '../../../../frontend/src/text/format-time';

describe('a time on a screen', () => {
  // Norway keeps UTC+1, and UTC+2 from the last Sunday of March (tz database).
  it('is told in the site’s zone, summer and winter', () => {
    expect(formatClock('2026-03-01T12:00:00.000Z', 'Europe/Oslo')).toBe('13:00:00');
    expect(formatMoment('2026-07-01T22:30:05.000Z', 'Europe/Oslo')).toBe('2026-07-02 00:30:05');
  });

  it('leaves the date out on the day that it is', () => {
    expect(formatSince('2026-03-01T11:48:10.000Z', '2026-03-01T12:00:00.000Z', 'UTC')).toBe('11:48:10');
    expect(formatSince('2026-02-28T23:48:10.000Z', '2026-03-01T00:10:00.000Z', 'UTC')).toBe('2026-02-28 23:48:10');
  });
});

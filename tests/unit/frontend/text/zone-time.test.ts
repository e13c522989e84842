import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromZoneLocal, toZoneLocal } from '../../../../frontend/src/text/zone-time';

/** Offsets of the IANA time zone database: Oslo +1 h, +2 h in summer; Kathmandu +5:45. Summer time in the EU ends on the last Sunday of October at 01:00 UTC (Directive 2000/84/EC). */
describe('a moment in a field of date and time', () => {
  it.each([
    ['2026-03-01T12:00:00.000Z', 'Europe/Oslo', '2026-03-01T13:00:00'],
    ['2026-07-01T12:00:00.000Z', 'Europe/Oslo', '2026-07-01T14:00:00'],
    ['2026-03-01T12:00:00.000Z', 'Asia/Kathmandu', '2026-03-01T17:45:00'],
  ])('%s in %s is %s, and back', (iso, zone, local) => {
    expect(toZoneLocal(iso, zone)).toBe(local);
    expect(fromZoneLocal(local, zone)).toBe(iso);
  });

  it('comes back the same, but for the hour that comes twice', () => {
    const whole = fc.integer({ min: 1_500_000_000, max: 1_900_000_000 });
    fc.assert(
      fc.property(
        whole,
        fc.constantFrom('UTC', 'Europe/Oslo', 'America/New_York', 'Asia/Kathmandu'),
        (seconds, zone) => {
          const iso = new Date(seconds * 1000).toISOString();
          const back = fromZoneLocal(toZoneLocal(iso, zone), zone);
          const off = Math.abs(Date.parse(back ?? '') - seconds * 1000);
          expect([0, 3_600_000]).toContain(off);
        },
      ),
    );
  });

  it('is none where the field holds none', () => {
    expect(fromZoneLocal('', 'UTC')).toBeNull();
    expect(fromZoneLocal('2026-03-01T12:00', 'UTC')).toBe('2026-03-01T12:00:00.000Z');
  });
});

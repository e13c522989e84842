import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseRfc3339 } from '../../../../../backend/src/evaluation/decode/rfc3339';

describe('parseRfc3339', () => {
  it.each([
    // RFC 3339 section 5.8, the examples; instants in UTC worked out by its section 4.
    ['1985-04-12T23:20:50.52Z', 482_196_050_520],
    ['1996-12-19T16:39:57-08:00', 851_042_397_000],
    ['1990-12-31T23:59:60Z', 662_688_000_000],
    ['1990-12-31T15:59:60-08:00', 662_688_000_000],
    ['1937-01-01T12:00:27.87+00:20', Date.UTC(1937, 0, 1, 11, 40, 27, 870)],
    // Section 5.6, note: lower case, and a blank for the T.
    ['1985-04-12t23:20:50.52z', 482_196_050_520],
    ['1985-04-12 23:20:50.52Z', 482_196_050_520],
    // ISO 8601: decimal comma, offset without colon or without minutes.
    ['1985-04-12T23:20:50,52Z', 482_196_050_520],
    ['1996-12-19T16:39:57-0800', 851_042_397_000],
    ['1996-12-19T16:39:57-08', 851_042_397_000],
    // Leap days of the Gregorian calendar: 2000 has one.
    ['2000-02-29T00:00:00Z', 951_782_400_000],
    ['2026-01-01T00:00:00.123456789Z', 1_767_225_600_123],
  ])('reads %s', (text, expected) => {
    expect(parseRfc3339(text)).toBe(expected);
  });

  it.each([
    ['2026-01-01T00:00:00', 'no offset: local time has no instant'],
    ['2026-02-29T00:00:00Z', 'no such day'],
    ['1900-02-29T00:00:00Z', '1900 has no leap day'],
    ['2026-13-01T00:00:00Z', 'no such month'],
    ['2026-00-01T00:00:00Z', 'month 0'],
    ['2026-01-01T24:00:00Z', 'hour 24 (RFC 3339 section 5.7)'],
    ['2026-01-01T00:60:00Z', 'minute 60'],
    ['2026-01-01T12:00:60Z', 'a leap second ends a UTC day'],
    ['2026-01-01T00:00:61Z', 'second 61'],
    ['2026-01-01T00:00:00.Z', 'a point without digits'],
    ['2026-01-01T00:00:00+24:00', 'offset of a day'],
    ['2026-01-01T00:00:00+1:00', 'offset of one digit'],
    ['2026-01-01T00:00:00Zulu', 'more after the offset'],
    ['2026-1-1T00:00:00.000Z', 'months of one digit'],
    ['', 'nothing'],
  ])('refuses %s: %s', (text) => {
    expect(parseRfc3339(text)).toBeNaN();
  });

  it('agrees with the calendar of the engine over four thousand years', () => {
    const range = { min: new Date('0001-01-02T00:00:00Z'), max: new Date('4000-12-31T00:00:00Z'), noInvalidDate: true };
    fc.assert(
      fc.property(fc.date(range), (date) => {
        expect(parseRfc3339(date.toISOString())).toBe(date.getTime());
      }),
    );
  });

  it('takes any text without throwing', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(typeof parseRfc3339(text)).toBe('number');
      }),
    );
  });
});

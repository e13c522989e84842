import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { localPeriods } from '../../../../../backend/src/runner/energy/local-periods';

const periods = (from: string, to: string, step: 'hour' | 'day' | 'month', zone: string): readonly number[] =>
  localPeriods(Date.parse(from), Date.parse(to), step, zone, 10_000) ?? [];
const text = (boundaries: readonly number[]): readonly string[] => boundaries.map((ms) => new Date(ms).toISOString());
const hours = (boundaries: readonly number[]): readonly number[] =>
  boundaries.slice(1).map((end, i) => (end - (boundaries[i] ?? end)) / 3_600_000);

// Changes of clocks: IANA time zone data base, as the runtime carries it. Europe/Oslo: last Sundays of March and October, at 01:00 UTC.
describe('localPeriods', () => {
  it('gives the day of spring 23 hours and that of autumn 25', () => {
    expect(hours(periods('2026-03-28T12:00:00Z', '2026-03-30T12:00:00Z', 'day', 'Europe/Oslo'))).toEqual([24, 23, 24]);
    expect(hours(periods('2026-10-24T12:00:00Z', '2026-10-26T12:00:00Z', 'day', 'Europe/Oslo'))).toEqual([24, 25, 24]);
  });

  it('begins days at local midnight', () => {
    expect(text(periods('2026-07-01T12:00:00Z', '2026-07-01T12:00:01Z', 'day', 'Europe/Oslo'))).toEqual([
      '2026-06-30T22:00:00.000Z',
      '2026-07-01T22:00:00.000Z',
    ]);
  });

  it('begins months at local midnight of their first day, in summer and in winter', () => {
    expect(text(periods('2026-03-31T21:59:00Z', '2026-11-01T00:00:00Z', 'month', 'Europe/Oslo'))).toEqual([
      '2026-02-28T23:00:00.000Z',
      '2026-03-31T22:00:00.000Z',
      '2026-04-30T22:00:00.000Z',
      '2026-05-31T22:00:00.000Z',
      '2026-06-30T22:00:00.000Z',
      '2026-07-31T22:00:00.000Z',
      '2026-08-31T22:00:00.000Z',
      '2026-09-30T22:00:00.000Z',
      '2026-10-31T23:00:00.000Z',
      '2026-11-30T23:00:00.000Z',
    ]);
  });

  it('keeps the hour that comes twice apart', () => {
    const found = periods('2026-10-25T00:00:00Z', '2026-10-25T03:00:00Z', 'hour', 'Europe/Oslo');
    expect(hours(found)).toEqual([1, 1, 1]);
  });

  it('begins hours of zones that are off by 45 minutes at their own full hour', () => {
    expect(text(periods('2026-07-01T12:00:00Z', '2026-07-01T12:10:00Z', 'hour', 'Asia/Kathmandu'))).toEqual([
      '2026-07-01T11:15:00.000Z',
      '2026-07-01T12:15:00.000Z',
    ]);
  });

  it('follows a change of clocks by half an hour', () => {
    expect(hours(periods('2026-04-04T12:00:00Z', '2026-04-05T12:00:00Z', 'day', 'Australia/Lord_Howe'))).toEqual([
      24, 24.5,
    ]);
  });

  it('begins a day later where its midnight is left out', () => {
    expect(hours(periods('2026-09-05T12:00:00Z', '2026-09-07T12:00:00Z', 'day', 'America/Santiago'))).toEqual([
      24, 23, 24,
    ]);
  });

  it('says so where there would be more periods than may be', () => {
    expect(localPeriods(0, 100 * 3_600_000, 'hour', 'UTC', 99)).toBeNull();
    expect(localPeriods(0, 100 * 3_600_000, 'hour', 'UTC', 100)?.length).toBe(101);
  });

  it('covers what is asked without gap, from and to within the first and last period', () => {
    const zones = ['Europe/Oslo', 'America/New_York', 'Asia/Kathmandu', 'Australia/Lord_Howe', 'UTC'];
    const day = 86_400_000;
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.constantFrom('hour', 'day', 'month' as const),
        fc.integer({ min: Date.UTC(2020), max: Date.UTC(2035) }),
        fc.integer({ min: 1, max: 3 * day }),
        (zone, step, fromMs, length) => {
          const found = localPeriods(fromMs, fromMs + length, step, zone, 1000) ?? [];
          const [first = NaN, second = NaN] = found;
          expect(first <= fromMs && fromMs < second).toBe(true);
          const last = found.at(-1) ?? NaN;
          expect(last >= fromMs + length && (found.at(-2) ?? NaN) < fromMs + length).toBe(true);
          expect(found.every((ms, i) => i === 0 || ms > (found[i - 1] ?? NaN))).toBe(true);
        },
      ),
    );
  });
});

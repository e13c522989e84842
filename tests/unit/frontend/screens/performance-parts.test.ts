import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sayFigure, sayTarget } from '../../../../frontend/src/screens/performance/figure-words';
import { hourRows } from '../../../../frontend/src/screens/performance/hour-rows';
import type { PerformanceView } from '../../../../frontend/src/screens/performance/performance-address';
import {
  performanceWish,
  readPerformanceAddress,
  writePerformanceAddress,
} from '../../../../frontend/src/screens/performance/performance-address';

const noon = '2026-03-01T12:00:30.000Z';

describe('the address of the Performance screen', () => {
  const views: fc.Arbitrary<PerformanceView> = fc.record({
    hall: fc.option(fc.stringMatching(/^[a-z]{1,9}$/)),
    period: fc.oneof(
      fc.record({ kind: fc.constant('last' as const), days: fc.integer({ min: 1, max: 3660 }) }),
      fc.tuple(fc.integer({ min: 1e12, max: 2e12 }), fc.integer({ min: 1, max: 1e10 })).map(([at, length]) => ({
        kind: 'fixed' as const,
        from: new Date(at).toISOString(),
        to: new Date(at + length).toISOString(),
      })),
    ),
  });

  it('holds all that is shown', () => {
    fc.assert(
      fc.property(views, (view) => {
        expect(readPerformanceAddress(writePerformanceAddress(view))).toEqual(view);
      }),
    );
  });

  it.each([{ days: '0' }, { days: 'x' }, { from: 'x', to: 'y' }, { from: noon, to: '2026-02-01T00:00:00Z' }])(
    'falls back to thirty days by %j',
    (query) => {
      expect(readPerformanceAddress(query).period).toEqual({ kind: 'last', days: 30 });
    },
  );

  it('asks up to the last whole minute, and nothing before the time is known', () => {
    const view = readPerformanceAddress({ days: '7', hall: 'east' });
    expect(performanceWish(view, noon)).toEqual({
      from: '2026-02-22T12:00:00.000Z',
      to: '2026-03-01T12:00:00.000Z',
      hall: 'east',
    });
    expect(performanceWish(view, null)).toBeNull();
  });
});

describe('hours as rows', () => {
  const stroke = (from: string, annunciations: number) => ({ from, annunciations });

  it('are a row a day in the zone of the site, empty days too', () => {
    // Oslo is an hour ahead of UTC in winter (CET).
    const rows = hourRows(
      [stroke('2026-02-26T23:00:00.000Z', 4), stroke('2026-02-28T10:00:00.000Z', 2)],
      { from: '2026-02-26T12:00:00.000Z', to: '2026-03-01T12:00:00.000Z' },
      'Europe/Oslo',
    );
    expect(rows.map(({ label, annunciations }) => [label, annunciations])).toEqual([
      ['2026-02-26', 0],
      ['2026-02-27', 4],
      ['2026-02-28', 2],
      ['2026-03-01', 0],
    ]);
    expect(rows[1]?.strokes[0]).toMatchObject({ hour: 0, annunciations: 4, words: '2026-02-27 00:00' });
  });

  it('are a row a week from Monday where days would be too many', () => {
    // 2026-01-05 is a Monday (ISO 8601 week 2 of 2026).
    const rows = hourRows(
      [stroke('2026-01-06T05:00:00.000Z', 3)],
      { from: '2026-01-07T00:00:00.000Z', to: '2026-03-09T00:00:00.000Z' },
      'UTC',
    );
    expect(rows[0]).toMatchObject({ label: '2026-01-05', hours: 168, annunciations: 3 });
    expect(rows[0]?.strokes[0]?.hour).toBe(29);
    expect(rows).toHaveLength(9);
  });
});

describe('a figure in words', () => {
  const plain = (text: string | null): string | null => text?.replaceAll('\u00a0', ' ') ?? null;
  it.each([
    [3, 'a day', '3 a day'],
    [0.123, 'an hour', '0.12 an hour'],
    [12.34, '%', '12.3 %'],
    [95, 's', '95 s'],
  ])('says %d %s as %s', (value, unit, said) => {
    expect(plain(sayFigure(value, unit))).toBe(said);
  });

  it('says what is aimed at', () => {
    const figure = (acceptable: number | null, limit: number | null) => ({
      id: 'x',
      title: 'x',
      value: 1,
      unit: 'a day',
      acceptable,
      limit,
      verdict: 'within' as const,
      source: '',
    });
    expect(plain(sayTarget(figure(150, 300)))).toBe('150 acceptable, at most 300 a day');
    expect(plain(sayTarget(figure(null, 10)))).toBe('at most 10 a day');
    expect(sayTarget(figure(null, null))).toBeNull();
  });
});

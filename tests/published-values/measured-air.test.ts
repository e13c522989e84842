import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { celsius, type Celsius } from '@ebbline/shared/units/quantity';
import { expect, it } from 'vitest';
import { derivedPointsOfHall } from '../../backend/src/evaluation/derive/derived-points';
import { pathOf, suiteNeeding } from '../helpers/requirements';

interface Hour {
  readonly time: string;
  readonly temperature: Celsius;
  readonly dewPoint: Celsius;
  /** As a ratio. */
  readonly humidity: number;
}

/**
 * Hourly surface observations of one airport station in 2013 (ASOS, as collected by the Iowa Environmental Mesonet; CC0).
 * The dew point is what the station reported, not something computed from the two other columns.
 */
function hours(): Hour[] {
  const [head = '', ...lines] = readFileSync(join(pathOf('data'), 'weather/ewr2013_hourly.csv'), 'utf8')
    .trim()
    .split('\n');
  const names = head.split(',');
  const column = (name: string): number => names.indexOf(name);
  const [temp, dewp, humid, time] = ['temp', 'dewp', 'humid', 'time_hour'].map(column) as [
    number,
    number,
    number,
    number,
  ];
  // NIST SP 811, B.8: t/°C = (t/°F − 32)/1.8.
  const fromFahrenheit = (text = ''): Celsius => celsius((Number(text) - 32) / 1.8);
  return lines
    .map((line) => line.split(','))
    .filter((cells) => [temp, dewp, humid].every((at) => cells[at] !== 'NA'))
    .map((cells) => ({
      time: cells[time] ?? '',
      temperature: fromFahrenheit(cells[temp]),
      dewPoint: fromFahrenheit(cells[dewp]),
      humidity: Number(cells[humid]) / 100,
    }));
}

/** The station reports temperatures in steps of 0.1 °C (FMH-1, chapter 12, remark group T; from memory). */
const stepK = 0.1;

/** Hours in which the station's own columns contradict each other by more than 2 K: they are not of the same minute. */
const contradictory = [
  '2013-01-30T23:00:00Z',
  '2013-05-11T04:00:00Z',
  '2013-05-11T19:00:00Z',
  '2013-05-23T22:00:00Z',
  '2013-06-17T19:00:00Z',
  '2013-06-25T20:00:00Z',
  '2013-07-04T14:00:00Z',
  '2013-07-20T22:00:00Z',
  '2013-08-27T13:00:00Z',
  '2013-09-12T23:00:00Z',
  '2013-10-07T19:00:00Z',
];

suiteNeeding(['data'], 'the dew point of a year of measured air', () => {
  const equation = derivedPointsOfHall.find(({ id }) => id === 'dewPoint')?.equation as (
    temperature: Celsius,
    humidity: number,
  ) => Celsius;
  const offK = (shiftK = 0): { time: string; off: number }[] =>
    hours().map(({ time, temperature, dewPoint, humidity }) => ({
      time,
      off: Math.abs(equation(temperature, humidity) + shiftK - dewPoint),
    }));
  const shareWithin = (all: readonly { off: number }[], limit: number): number =>
    all.filter(({ off }) => off <= limit).length / all.length;

  it('is within the step of reporting of what the station reported in 94 of 100 hours, and within 1 K in 99', () => {
    const all = offK();
    expect(all.length).toBeGreaterThan(8000);
    expect(all.every(({ off }) => Number.isFinite(off))).toBe(true);
    expect(shareWithin(all, stepK * 1.001)).toBeGreaterThan(0.94);
    expect(shareWithin(all, 1)).toBeGreaterThan(0.99);
  });

  it('differs by more than 2 K only where the columns contradict each other, in hours known by name', () => {
    const far = offK()
      .filter(({ off }) => off > 2)
      .map(({ time }) => time);
    expect(far.sort()).toEqual(contradictory);
  });

  it('would not agree if it were off by two steps', () => {
    for (const shiftK of [-2 * stepK, 2 * stepK]) expect(shareWithin(offK(shiftK), stepK)).toBeLessThan(0.1);
  });
});

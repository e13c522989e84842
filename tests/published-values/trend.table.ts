import { mannKendallS, mannKendallVariance, mannKendallZ } from '@ebbline/shared/statistics/mann-kendall';
import { theilSen } from '@ebbline/shared/statistics/theil-sen';
import type { timeToLimit } from '@ebbline/shared/statistics/time-to-limit';
import { deriveUnit } from '../../backend/src/evaluation/derive/derive-unit';
import { buildRichUnitM, runRichUnitM } from '../helpers/rich-unit-m';
import { absolute, relative, type PublishedTable } from './published-table';

const x = [1, 2, 3, 4, 10, 12, 18];
const y = [9, 15, 19, 20, 45, 55, 78];
const sen = 'Sen 1968, J. Amer. Stat. Assoc. 63:1379–1389, example of seven points';
const kendall = 'Kendall; Gilbert 1987 ch. 16, for the same seven points';

/** z of the 93 % interval: Φ(1.812) = 0.965. */
const z93 = 1.812;

export const theilSenTable: PublishedTable = {
  title: 'Theil–Sen slope and its 93 % interval',
  subject: { equation: theilSen as unknown as (...inputs: never[]) => number },
  evaluate: (_, { which = 0 }) => {
    const { slope, lower, upper } = theilSen(x, y, x.length, z93);
    return [slope, lower, upper][which] ?? Number.NaN;
  },
  rows: [
    {
      id: 'theil-sen slope',
      status: 'published',
      source: sen,
      inputs: { which: 0 },
      expected: 4,
      tolerance: absolute(1e-9),
    },
    {
      id: 'theil-sen lower',
      status: 'published',
      source: `${sen} (its interval as the R package deming corrects it)`,
      inputs: { which: 1 },
      expected: 3.7142857142857144,
      tolerance: absolute(1e-9),
    },
    {
      id: 'theil-sen upper',
      status: 'published',
      source: `${sen} (its interval as the R package deming corrects it)`,
      inputs: { which: 2 },
      expected: 4.375,
      tolerance: absolute(1e-9),
    },
  ],
};

export const mannKendallTable: PublishedTable = {
  title: 'Mann–Kendall S, its variance and z',
  subject: { equation: mannKendallZ as unknown as (...inputs: never[]) => number },
  evaluate: (_, { which = 0 }) =>
    [mannKendallS(y, y.length), mannKendallVariance(y.length), mannKendallZ(y, y.length)][which] ?? Number.NaN,
  rows: [
    {
      id: 'mann-kendall S',
      status: 'published',
      source: kendall,
      inputs: { which: 0 },
      expected: 21,
      tolerance: absolute(1e-9),
    },
    {
      id: 'mann-kendall var',
      status: 'published',
      source: kendall,
      inputs: { which: 1 },
      expected: 44.3333,
      tolerance: absolute(1e-3),
    },
    {
      id: 'mann-kendall z',
      status: 'published',
      source: kendall,
      inputs: { which: 2 },
      expected: 3.00375,
      tolerance: absolute(1e-4),
    },
  ],
};

export const timeToLimitTable: PublishedTable = {
  title: 'time to a limit by a straight line, min',
  subject: { point: 'filterTimeToLimit' },
  evaluate: (equation, { slope = 0, now = 0, limit = 0 }) =>
    (equation as unknown as typeof timeToLimit)(now, limit, slope, 'above'),
  rows: [
    {
      id: 'ttl-trend',
      status: 'computed',
      source: 'definition (trend extrapolation; computed)',
      inputs: { slope: 0.015, now: 43.2, limit: 45 },
      expected: 120,
      tolerance: absolute(1e-9),
    },
  ],
};

export const marginTimeTable: PublishedTable = { ...timeToLimitTable, subject: { point: 'marginTimeToLimit' } };

export const waterTrendTable: PublishedTable = {
  title: 'slope through points one apart: their own, by hand',
  subject: { point: 'loopWaterTrend' },
  evaluate: (equation) => equation(1, 3, 5, 100, 9),
  rows: [
    {
      id: 'one wild point of five',
      status: 'computed',
      source:
        'Theil–Sen by hand: of ten pair slopes the six without the wild point are 2, and two stand on either side',
      inputs: {},
      expected: 2,
      tolerance: absolute(1e-9),
    },
  ],
};

/** A filter that loads for 20 hours by 0.03 of its clean resistance an hour, and a margin that falls by 60 Pa in ten minutes. */
const onSiteRow = (id: string, expected: number): PublishedTable['rows'][number] => ({
  id,
  status: 'computed',
  source: 'definition (trend extrapolation), by hand',
  inputs: {},
  expected,
  tolerance: relative(0.02),
});
const watchedOnSite = (point: string, hours: number): number => {
  const built = buildRichUnitM({ accuracy: { 'filter.pressureDrop': [1e-9, Number.NaN] } });
  for (let s = 0; s <= hours * 3600; s += 10) {
    runRichUnitM(built, s * 1000);
    built.set('filter.pressureDrop', 15_000 * (1 + (0.03 * s) / 3600), s * 1000);
    built.set('ambient.pressure', 101_300 - (60 * s) / 600, s * 1000);
    built.set('separator.level', 0.6 + (0.001 * s) / 3600, s * 1000);
    deriveUnit(built.site, built.state, 0, s * 1000, false);
  }
  return built.value(point);
};

export const filterTimeOnSiteTable: PublishedTable = {
  title: 'hours until a filter that gained 0.6 in 20 h has doubled',
  subject: { point: 'filterTimeToLimit' },
  evaluate: (equation) => (equation as unknown as typeof timeToLimit)(1.6, 2, 0.03, 'above'),
  onSite: { point: 'filterTimeToLimit', evaluate: () => watchedOnSite('filterTimeToLimit', 20) / 3600 },
  rows: [onSiteRow('0.4 left at 0.03 an hour', 13.333)],
};

/** 12.68 kPa less U = 0.74 stand 6.94 above 5 kPa; 360 Pa/h for 10 h leave 3.34, which last 9.3 h. */
export const marginTimeOnSiteTable: PublishedTable = {
  title: 'hours until a falling barometer has used up the margin',
  subject: { point: 'marginTimeToLimit' },
  evaluate: (equation) => (equation as unknown as typeof timeToLimit)(8_342, 5_000, -360, 'below'),
  onSite: { point: 'marginTimeToLimit', evaluate: () => watchedOnSite('marginTimeToLimit', 10) / 3600 },
  rows: [onSiteRow('3.34 kPa left at 360 Pa an hour', 9.283)],
};

/** 1 mm an hour on 0.17 m². */
export const waterTrendOnSiteTable: PublishedTable = {
  title: 'water gained, mL/h',
  subject: { point: 'loopWaterTrend' },
  evaluate: (equation) => equation(0, 170, 340),
  onSite: { point: 'loopWaterTrend', evaluate: () => watchedOnSite('loopWaterTrend', 12) * 3600e6 },
  rows: [onSiteRow('1 mm an hour on 0.17 m²', 170)],
};

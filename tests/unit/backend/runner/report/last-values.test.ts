import { describe, expect, it } from 'vitest';
import { lastValues } from '../../../../../backend/src/runner/report/last-values';
import { historyInMemory } from '../../../../helpers/history-in-memory';
import { smallSite } from '../../../../helpers/small-site';
import { fromMs, minutes } from './report-sources';

const site = smallSite();
const holder = site.holders[site.units[0]?.holder ?? -1];
if (holder === undefined) throw new Error('the site has no unit');

/** What is told of a minute of which only its figures are left. */
const toldOf = async (least: number, mean: number, most: number): Promise<number | undefined> => {
  const store = historyInMemory(site);
  store.minutesBeforeMs = minutes(100);
  const one = (value: number): Float64Array => Float64Array.of(value);
  const figures = { min: one(least), mean: one(mean), max: one(most), count: one(60), startMs: one(fromMs) };
  const read = () => Promise.resolve({ bucketMs: 60_000, resolution: 'minute', ...figures } as const);
  return (await lastValues({ ...store, read }, site, holder, ['mode'], minutes(10))).get('mode');
};

describe('the last values of a time of which only minutes are left', () => {
  it('are those that stood all the minute, and none where a number that counts changed in it', async () => {
    expect(await toldOf(4, 4, 4)).toBe(4);
    expect(await toldOf(0.2, 0.3, 0.4)).toBe(0.3);
    // Half a minute of 1 and half a minute of 5 is no 3.
    expect(await toldOf(1, 3, 5)).toBeNaN();
  });
});

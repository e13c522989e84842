import { describe, expect, it } from 'vitest';
import type { HistoryQuery, HistoryStore, SecondsQuery } from '../../../../../backend/src/ports/history-store';
import { readPlant } from '../../../../../backend/src/runner/report/read-plant';
import { smallSite } from '../../../../helpers/small-site';
import { fromMs, minutes, time } from './report-sources';

const site = smallSite();
const [node, other] = site.units[0]?.nodes.map(({ id }) => id) ?? [];

/** What each point stands at all the time; a point that is not named was never recorded. */
const values: Readonly<Record<string, number>> = {
  'm1 vacuumMarginWorst': 9000,
  'm2 vacuumMarginWorst': 12_000,
  [`m1 node.${node ?? ''}.pressure`]: 80_000,
  [`m1 node.${other ?? ''}.pressureStopped`]: 92_000,
};

/** Refuses what no history takes: times that are no whole milliseconds, and periods without length. */
const store: Pick<HistoryStore, 'read' | 'readSeconds'> = {
  read({ buckets, fromMs: from, holder, point, toMs }: HistoryQuery) {
    if (!Number.isInteger(from) || !Number.isInteger(toMs) || from >= toMs) throw new Error('HISTORY_QUERY_INVALID');
    const value = values[`${holder} ${point}`] ?? Number.NaN;
    const bucketMs = (toMs - from) / buckets;
    const all = (one: number) => new Float64Array(buckets).fill(one);
    const startMs = all(0).map((_, at) => from + at * bucketMs);
    const of = { min: all(value), mean: all(value), max: all(value), count: all(Number.isNaN(value) ? 0 : 60) };
    return Promise.resolve({ bucketMs, resolution: 'second', startMs, ...of });
  },
  readSeconds({ columns, fromMs: from, holder, toMs }: SecondsQuery) {
    if (from % 1000 !== 0 || toMs % 1000 !== 0) throw new Error('HISTORY_QUERY_INVALID');
    const count = (toMs - from) / 1000;
    const quality = columns.map(() => new Uint8Array(count));
    const seconds = columns.map(({ point }) =>
      new Float64Array(count).fill(values[`${holder} ${point}`] ?? Number.NaN),
    );
    return Promise.resolve({ fromMs: from, count, values: seconds, quality, minutesBeforeMs: -Infinity });
  },
};

describe('what history tells of a shift', () => {
  it('has the smallest margin of all units, where it was and how sure, also up to a moment between two milliseconds', async () => {
    const asked: unknown[] = [];
    const uncertaintyAt = (unit: string, point: string): Promise<number> => {
      asked.push([unit, point]);
      return Promise.resolve(800);
    };
    const untilMs = minutes(10) + 0.37;
    const plant = await readPlant({ site, hall: null, fromMs, untilMs }, { store, uncertaintyAt });
    expect(plant.smallestMargin).toMatchObject({
      ...{ unit: 'm1', value: 9000, unit_of_measure: 'Pa', at: time(fromMs), where: other, expandedUncertainty: 800 },
      share: 1,
    });
    expect(plant.smallestReserve).toBeNull();
    expect(asked).toEqual([['m1', 'vacuumMarginWorst']]);
  });

  it('says of every unit what is not known of its line-up, and nothing as usual', async () => {
    const parts = { store, uncertaintyAt: () => Promise.resolve(null) };
    const { lineUp, topUp } = await readPlant({ site, hall: 'north', fromMs, untilMs: minutes(10) }, parts);
    expect(lineUp.map(({ asUsual, offNormal, unit }) => [unit, asUsual, offNormal])).toEqual([
      ['m1', 0, []],
      ['m2', 0, []],
    ]);
    expect(lineUp[0]?.unknown).toContain('mode');
    expect(topUp.every(({ volume }) => volume === null)).toBe(true);
    expect(topUp[0]?.notes).toEqual(['No unit of the loop counts top-up water.']);
  });

  it('is read at once for all points of a unit of a shift, and point by point of a longer time or where only minutes are left', async () => {
    const readsOf = async (untilMs: number, minutesBeforeMs: number): Promise<unknown> => {
      const read = new Map<string, number>();
      const counted: typeof store = {
        read: (query) => store.read((read.set(query.point, (read.get(query.point) ?? 0) + 1), query)),
        readSeconds: async (query) => ({ ...(await store.readSeconds(query)), minutesBeforeMs }),
      };
      const parts = { store: counted, uncertaintyAt: () => Promise.resolve(null) };
      const plant = await readPlant({ site, hall: null, fromMs, untilMs }, parts);
      const figure = plant.log.find(({ point, unit }) => unit === 'm2' && point === 'vacuumMarginWorst');
      return [read.get('vacuumMarginWorst') ?? 0, figure?.mean];
    };
    const units = site.units.length;
    expect(await readsOf(minutes(12 * 60), -Infinity)).toEqual([0, 12_000]);
    expect(await readsOf(minutes(12 * 60) + 1, -Infinity)).toEqual([units, 12_000]);
    expect(await readsOf(minutes(60), minutes(30))).toEqual([units, 12_000]);
  });
});

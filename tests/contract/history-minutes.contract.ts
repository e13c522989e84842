import { describe, expect, it } from 'vitest';
import {
  day,
  flow,
  hour,
  minute,
  otherHolder,
  plain,
  pressure,
  pressures,
  rowsOf,
  second,
  startMs,
} from './history-samples';
import type { StoreUnderTest } from './store-under-test';

/** What minutes must be, before and after seconds are folded into them. Part of the contract of every history store. */
export function historyMinutesContract(current: () => StoreUnderTest): void {
  const read = async (key: typeof pressure, fromMs: number, toMs: number, buckets: number) =>
    plain(await current().store.read({ ...key, fromMs, toMs, buckets }));

  describe('minutes', () => {
    /** Three hours, second i has the value (i mod 120) / 8: even minutes run 0 … 7.375, odd ones 7.5 … 14.875. */
    const threeHours = () => pressures(startMs, 3 * 3600, (index) => (index % 120) / 8);

    it('give the figures of the seconds they are made of, before and after maintenance', async () => {
      await current().store.write(threeHours());
      const expected = {
        min: Array<number>(18).fill(0),
        mean: Array<number>(18).fill(7.4375),
        max: Array<number>(18).fill(14.875),
        count: Array<number>(18).fill(600),
      };
      expect(await read(pressure, startMs, startMs + 3 * hour, 18)).toMatchObject(expected);
      await current().store.maintain(startMs + 3 * hour);
      expect(await read(pressure, startMs, startMs + 3 * hour, 18)).toMatchObject(expected);
      await current().store.maintain(startMs + day);
      const buckets = await current().store.read({
        ...pressure,
        fromMs: startMs,
        toMs: startMs + 3 * hour,
        buckets: 18,
      });
      expect(buckets.resolution).toBe('minute');
      expect(plain(buckets)).toMatchObject(expected);
    });

    it('count in the bucket in which they begin', async () => {
      await current().store.write(threeHours());
      const check = async () => {
        // From 00:00:30 in steps of 10 min: minutes 1 … 10, 11 … 20, then to 00:20:45 minute 20 alone is left of the rest.
        const found = await read(pressure, startMs + 30 * second, startMs + 30 * second + 20 * minute, 2);
        expect(found.count).toEqual([600, 600]);
        const half = await read(pressure, startMs + 59 * minute + second, startMs + 69 * minute + 2 * second, 1);
        expect(half).toMatchObject({ count: [600], min: [0], max: [14.875] });
      };
      await check();
      await current().store.maintain(startMs + 2 * hour);
      await check();
      await current().store.maintain(startMs + day);
      await check();
    });

    it('are given one by one of several holders, as long as they are kept, and empty where nothing was', async () => {
      const { holder, ...first } = pressure;
      const nobody = { point: 'no.such', unitOfMeasure: '1' };
      const ask = async (minuteMs: number) => {
        const columns = [{ point: flow.point, unitOfMeasure: flow.unitOfMeasure }, nobody, first];
        const holders = [
          { holder: otherHolder.holder, columns: [first] },
          { holder, columns },
          { holder: 'unit-9', columns },
        ];
        const found = await current().store.readMinute({ holders, minuteMs });
        return found.map(({ min, mean, max, count }) => [min, mean, max, count].map((figure) => [...figure]));
      };
      await current().store.write(threeHours());
      await current().store.write(rowsOf([{ holder: 1, atMs: startMs + 61 * second, values: [5] }]));
      const none = [[NaN], [NaN], [NaN], [0]];
      const nothing = none.map(([one = 0]) => [one, one, one]);
      const check = async () => {
        const odd = [
          [NaN, NaN, 7.5],
          [NaN, NaN, 11.1875],
          [NaN, NaN, 14.875],
          [0, 0, 60],
        ];
        expect(await ask(startMs + minute)).toEqual([[[5], [5], [5], [1]], odd, nothing]);
        expect((await ask(startMs + 2 * hour))[0]).toEqual(none);
        expect(await ask(startMs + 4 * hour)).toEqual([none, nothing, nothing]);
      };
      await current().store.maintain(startMs + 5 * hour);
      await check();
      await current().store.maintain(startMs + 30 * day);
      await check();
    });

    it('weigh a mean by the count of each minute', async () => {
      // Minute 0: sixty values of 1; minute 1: a single 62; mean of the seconds (60 + 62) / 61 = 2.
      await current().store.write(pressures(startMs, 61, (index) => (index < 60 ? 1 : 62)));
      const expected = { min: [1], mean: [2], max: [62], count: [61] };
      expect(await read(pressure, startMs, startMs + 10 * minute, 1)).toMatchObject(expected);
      await current().store.maintain(startMs + day);
      expect(await read(pressure, startMs, startMs + 10 * minute, 1)).toMatchObject(expected);
    });

    it('leave seconds as they were for narrow buckets', async () => {
      await current().store.write(threeHours());
      await current().store.maintain(startMs + day);
      const buckets = await current().store.read({
        ...pressure,
        fromMs: startMs + 3599_000,
        toMs: startMs + 3602_000,
        buckets: 3,
      });
      expect(buckets.resolution).toBe('second');
      expect(plain(buckets)).toMatchObject({ mean: [119 / 8, 0, 1 / 8], count: [1, 1, 1] });
    });
  });

  describe('late rows', () => {
    it('merge after the hour was closed, in seconds at once and in minutes with the next maintenance', async () => {
      await current().store.write(pressures(startMs, 120, () => 4));
      await current().store.maintain(startMs + 3 * hour);
      await current().store.write(
        rowsOf([
          { holder: 0, atMs: startMs + second, values: [100, null, null] },
          { holder: 0, atMs: startMs + 2 * second, values: [null, 3, null] },
          { holder: 0, atMs: startMs + 120 * second, values: [8, null, null] },
        ]),
      );
      const check = async () => {
        expect(await read(pressure, startMs, startMs + 3 * second, 3)).toMatchObject({
          mean: [4, 100, 4],
          count: [1, 1, 1],
        });
        expect(await read(flow, startMs, startMs + 3 * second, 3)).toMatchObject({ mean: [null, null, 3] });
        // 119 × 4 + 100 + 8 = 584 over 121.
        expect(await read(pressure, startMs, startMs + 10 * minute, 1)).toMatchObject({
          min: [4],
          mean: [584 / 121],
          max: [100],
          count: [121],
        });
      };
      await check();
      for (const hours of [3.1, 5, 7]) {
        await current().store.maintain(startMs + hours * hour);
        await check();
      }
    });
  });
}

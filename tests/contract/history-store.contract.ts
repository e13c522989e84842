import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { HistoryStore } from '../../backend/src/ports/history-store';
import {
  day,
  flow,
  hour,
  layout,
  minute,
  oddName,
  otherHolder,
  plain,
  pressure,
  pressures,
  rowsOf,
  second,
  startMs,
} from './history-samples';

/** A store on data of its own; `reopen` ends it as a restart of the program does and opens it on the same data. */
export interface StoreUnderTest {
  store: HistoryStore;
  reopen(): Promise<void>;
  remove(): Promise<void>;
}

/**
 * What every history store must do; expected numbers are worked out by hand from the few values written.
 * All values are multiples of 1/8, so that sums are exact and means may be compared for equality.
 */
export function historyStoreContract(open: () => Promise<StoreUnderTest>): void {
  let subject: StoreUnderTest;
  beforeEach(async () => {
    subject = await open();
    await subject.store.useLayout(layout);
  });
  afterEach(() => subject.remove());

  const read = async (key: typeof pressure, fromMs: number, toMs: number, buckets: number) =>
    plain(await subject.store.read({ ...key, fromMs, toMs, buckets }));

  describe('read', () => {
    it('gives min, mean, max and count of the seconds in each bucket, and gaps as gaps', async () => {
      await subject.store.write(pressures(startMs, 6, (index) => [1.5, 2.5, null, -3, 9, null][index] ?? null));
      expect(await read(pressure, startMs, startMs + 8 * second, 4)).toEqual({
        start: [startMs, startMs + 2000, startMs + 4000, startMs + 6000],
        min: [1.5, -3, 9, null],
        mean: [2, -3, 9, null],
        max: [2.5, -3, 9, null],
        count: [2, 1, 1, 0],
      });
    });

    it('takes from in and leaves to out', async () => {
      await subject.store.write(pressures(startMs, 4, (index) => index));
      expect((await read(pressure, startMs + 1000, startMs + 3000, 1)).count).toEqual([2]);
      expect((await read(pressure, startMs + 1000, startMs + 3001, 1)).count).toEqual([3]);
      expect((await read(pressure, startMs + 1001, startMs + 3000, 1)).count).toEqual([1]);
    });

    it('aligns buckets at from and rounds their width up to a whole ms', async () => {
      await subject.store.write(pressures(startMs, 10, (index) => index));
      const buckets = await subject.store.read({
        ...pressure,
        fromMs: startMs + 500,
        toMs: startMs + 10_500,
        buckets: 3,
      });
      expect(buckets.bucketMs).toBe(3334);
      expect(buckets.resolution).toBe('second');
      // 500 … 3834: seconds 1, 2, 3; 3834 … 7168: 4, 5, 6, 7; 7168 … 10500: 8, 9.
      expect(plain(buckets)).toEqual({
        start: [startMs + 500, startMs + 3834, startMs + 7168],
        min: [1, 4, 8],
        mean: [2, 5.5, 8.5],
        max: [3, 7, 9],
        count: [3, 4, 2],
      });
    });

    it('gives no more buckets than start before to', async () => {
      // 10 ms in 6: width 2, five buckets.
      const buckets = await subject.store.read({ ...pressure, fromMs: startMs, toMs: startMs + 10, buckets: 6 });
      expect([buckets.bucketMs, buckets.startMs.length]).toEqual([2, 5]);
    });

    it('gives empty buckets for a holder, point or unit of measure that nobody wrote', async () => {
      await subject.store.write(pressures(startMs, 2, () => 1));
      for (const key of [
        { ...pressure, holder: 'unit-9' },
        { ...pressure, point: 'no.such' },
        { ...pressure, unitOfMeasure: 'kPa' },
      ]) {
        const found = await read(key, startMs, startMs + 2000, 2);
        expect(found.count).toEqual([0, 0]);
        expect(found.mean).toEqual([null, null]);
      }
    });

    it('refuses a query that is no period', async () => {
      const query = { ...pressure, fromMs: startMs, toMs: startMs, buckets: 1 };
      await expect(subject.store.read(query)).rejects.toThrow('HISTORY_QUERY_INVALID');
    });
  });

  describe('write', () => {
    it('keeps holders and their points apart, whatever characters their names have', async () => {
      await subject.store.write(
        rowsOf([
          { holder: 0, atMs: startMs, values: [1, 2, 3] },
          { holder: 1, atMs: startMs, values: [4] },
          { holder: 0, atMs: startMs + second, values: [10, 20, 30] },
        ]),
      );
      const meanOf = async (key: typeof pressure) => (await read(key, startMs, startMs + 2000, 2)).mean;
      expect(await meanOf(pressure)).toEqual([1, 10]);
      expect(await meanOf(flow)).toEqual([2, 20]);
      expect(await meanOf(oddName)).toEqual([3, 30]);
      expect(await meanOf(otherHolder)).toEqual([4, null]);
    });

    it('merges a later row into an earlier one of the same second, value by value, the last write wins', async () => {
      await subject.store.write(rowsOf([{ holder: 0, atMs: startMs, values: [1, 2, null] }]));
      await subject.store.write(rowsOf([{ holder: 0, atMs: startMs, values: [null, 5, 6] }]));
      await subject.store.write(rowsOf([{ holder: 0, atMs: startMs, values: [null, null, 7] }]));
      for (const [key, value] of [
        [pressure, 1],
        [flow, 5],
        [oddName, 7],
      ] as const) {
        expect(await read(key, startMs, startMs + 1000, 1)).toMatchObject({ min: [value], max: [value], count: [1] });
      }
    });

    it('merges within one batch in the order of its rows', async () => {
      await subject.store.write(
        rowsOf([
          { holder: 0, atMs: startMs, values: [1, 2, null] },
          { holder: 0, atMs: startMs, values: [3, null, null] },
        ]),
      );
      expect((await read(pressure, startMs, startMs + 1000, 1)).mean).toEqual([3]);
      expect((await read(flow, startMs, startMs + 1000, 1)).mean).toEqual([2]);
    });

    it('takes nothing away where a bad value comes after a good one, and counts no bad value', async () => {
      await subject.store.write(rowsOf([{ holder: 0, atMs: startMs, values: [1, null, null], quality: [1, 3, 0] }]));
      await subject.store.write(rowsOf([{ holder: 0, atMs: startMs, values: [null, null, null], quality: [3, 3, 3] }]));
      expect((await read(pressure, startMs, startMs + 1000, 1)).mean).toEqual([1]);
      expect((await read(flow, startMs, startMs + 1000, 1)).count).toEqual([0]);
    });

    it('keeps min and max numbers where NaN or an infinity was handed over', async () => {
      await subject.store.write(pressures(startMs, 5, (index) => [NaN, 1, Infinity, 2, -Infinity][index] ?? null));
      expect(await read(pressure, startMs, startMs + 5000, 1)).toMatchObject({
        min: [1],
        max: [2],
        mean: [1.5],
        count: [2],
      });
    });

    it('keeps a changed unit of measure apart from what was stored before', async () => {
      await subject.store.write(pressures(startMs, 1, () => 90_000));
      const [unit, hall] = layout.holders;
      if (unit === undefined || hall === undefined) throw new Error('two holders');
      const [, ...others] = unit.columns;
      const columns = [...others, { point: 'supply.pressure', unitOfMeasure: 'kPa' }];
      await subject.store.useLayout({ holders: [hall, { ...unit, columns }] });
      await subject.store.write(rowsOf([{ holder: 1, atMs: startMs + second, values: [2, 3, 90] }]));
      expect((await read(pressure, startMs, startMs + 2000, 2)).mean).toEqual([90_000, null]);
      expect((await read({ ...pressure, unitOfMeasure: 'kPa' }, startMs, startMs + 2000, 2)).mean).toEqual([null, 90]);
      expect((await read(flow, startMs, startMs + 2000, 2)).mean).toEqual([null, 2]);
    });

    it('refuses rows of a holder that the layout does not name', async () => {
      await expect(subject.store.write(rowsOf([{ holder: 7, atMs: startMs, values: [1] }]))).rejects.toThrow(
        'HISTORY_LAYOUT_MISSING',
      );
    });
  });

  describe('minutes', () => {
    /** Three hours, second i has the value (i mod 120) / 8: even minutes run 0 … 7.375, odd ones 7.5 … 14.875. */
    const threeHours = () => pressures(startMs, 3 * 3600, (index) => (index % 120) / 8);

    it('give the figures of the seconds they are made of, before and after maintenance', async () => {
      await subject.store.write(threeHours());
      const expected = {
        min: Array<number>(18).fill(0),
        mean: Array<number>(18).fill(7.4375),
        max: Array<number>(18).fill(14.875),
        count: Array<number>(18).fill(600),
      };
      expect(await read(pressure, startMs, startMs + 3 * hour, 18)).toMatchObject(expected);
      await subject.store.maintain(startMs + 3 * hour);
      expect(await read(pressure, startMs, startMs + 3 * hour, 18)).toMatchObject(expected);
      await subject.store.maintain(startMs + day);
      const buckets = await subject.store.read({ ...pressure, fromMs: startMs, toMs: startMs + 3 * hour, buckets: 18 });
      expect(buckets.resolution).toBe('minute');
      expect(plain(buckets)).toMatchObject(expected);
    });

    it('count in the bucket in which they begin', async () => {
      await subject.store.write(threeHours());
      const check = async () => {
        // From 00:00:30 in steps of 10 min: minutes 1 … 10, 11 … 20, then to 00:20:45 minute 20 alone is left of the rest.
        const found = await read(pressure, startMs + 30 * second, startMs + 30 * second + 20 * minute, 2);
        expect(found.count).toEqual([600, 600]);
        const half = await read(pressure, startMs + 59 * minute + second, startMs + 69 * minute + 2 * second, 1);
        expect(half).toMatchObject({ count: [600], min: [0], max: [14.875] });
      };
      await check();
      await subject.store.maintain(startMs + 2 * hour);
      await check();
      await subject.store.maintain(startMs + day);
      await check();
    });

    it('weigh a mean by the count of each minute', async () => {
      // Minute 0: sixty values of 1; minute 1: a single 62; mean of the seconds (60 + 62) / 61 = 2.
      await subject.store.write(pressures(startMs, 61, (index) => (index < 60 ? 1 : 62)));
      const expected = { min: [1], mean: [2], max: [62], count: [61] };
      expect(await read(pressure, startMs, startMs + 10 * minute, 1)).toMatchObject(expected);
      await subject.store.maintain(startMs + day);
      expect(await read(pressure, startMs, startMs + 10 * minute, 1)).toMatchObject(expected);
    });

    it('leave seconds as they were for narrow buckets', async () => {
      await subject.store.write(threeHours());
      await subject.store.maintain(startMs + day);
      const buckets = await subject.store.read({
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
      await subject.store.write(pressures(startMs, 120, () => 4));
      await subject.store.maintain(startMs + 3 * hour);
      await subject.store.write(
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
        await subject.store.maintain(startMs + hours * hour);
        await check();
      }
    });
  });

  describe('across a restart', () => {
    it('gives the same figures for what was written and sealed, and goes on', async () => {
      await subject.store.write(pressures(startMs, 3600, (index) => index / 8));
      await subject.store.maintain(startMs + 2 * hour);
      await subject.store.write(pressures(startMs + 2 * hour, 4, (index) => index));
      const before = [
        await read(pressure, startMs, startMs + 3 * hour, 5),
        await read(pressure, startMs, startMs + 100 * second, 50),
        await read(pressure, startMs + 2 * hour, startMs + 2 * hour + 8 * second, 8),
      ];
      await subject.reopen();
      await subject.store.useLayout(layout);
      await subject.store.write(pressures(startMs + 2 * hour + 4 * second, 1, () => 5));
      expect(await read(pressure, startMs, startMs + 100 * second, 50)).toEqual(before[1]);
      const after = await read(pressure, startMs + 2 * hour, startMs + 2 * hour + 8 * second, 8);
      expect(after.mean).toEqual([0, 1, 2, 3, 5, null, null, null]);
      expect(before[2]?.mean).toEqual([0, 1, 2, 3, null, null, null, null]);
      await subject.store.maintain(startMs + day);
      expect((await read(pressure, startMs, startMs + 2 * hour, 5)).count.slice(0, 2)).toEqual(
        before[0]?.count.slice(0, 0).concat([1440, 1440]),
      );
    });
  });

  it('says in health that it is well and that nothing waits once all is written', async () => {
    await subject.store.write(pressures(startMs, 10, () => 1));
    await subject.store.maintain(startMs + day);
    expect(subject.store.health()).toMatchObject({ state: 'ok', rowsQueued: 0 });
  });
}

import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { energyContract } from './energy.contract';
import { keptEnergyContract } from './kept-energy.contract';
import { historyMinutesContract } from './history-minutes.contract';
import { historySecondsContract } from './history-seconds.contract';
import {
  day,
  flow,
  hour,
  layout,
  oddName,
  otherHolder,
  plain,
  pressure,
  pressures,
  rowsOf,
  second,
  startMs,
} from './history-samples';
import type { StoreUnderTest } from './store-under-test';

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

  historyMinutesContract(() => subject);
  historySecondsContract(() => subject);
  energyContract(() => subject);
  keptEnergyContract(() => subject);

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

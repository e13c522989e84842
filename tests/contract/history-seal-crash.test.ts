import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DuckDBInstance, DuckDBBlobValue } from '@duckdb/node-api';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import { Manifest } from '../../backend/src/connections/history-store/embedded/manifest';
import { sealHour } from '../../backend/src/connections/history-store/embedded/seal-hour';
import { loadTailTables } from '../../backend/src/connections/history-store/embedded/tail-tables';
import { temporaryFolder, type TemporaryFolder } from '../helpers/temporary-folder';
import { day, hour, layout, minute, plain, pressure, pressures, rowsOf, second, startMs } from './history-samples';

let root: TemporaryFolder;
let folder: string;
let store: DuckDbHistoryStore;

beforeEach(async () => {
  root = await temporaryFolder();
  folder = join(root.path, 'history');
  store = await DuckDbHistoryStore.open({ folder });
  await store.useLayout(layout);
});
afterEach(async () => {
  await store.close();
  await root.stop();
});

const filesOf = (kind: string): string[] => readdirSync(join(folder, kind)).sort();
const hourly = async () =>
  plain(await store.read({ ...pressure, fromMs: startMs, toMs: startMs + 2 * hour, buckets: 2 }));

/** Works on the closed store's own database, as a process would that is then killed. */
async function between(job: (instance: DuckDBInstance) => Promise<void>): Promise<void> {
  await store.close();
  const instance = await DuckDBInstance.create(join(folder, 'history.duckdb'));
  await job(instance);
  instance.closeSync();
  store = await DuckDbHistoryStore.open({ folder });
  await store.useLayout(layout);
}

describe('a seal that was cut short', () => {
  beforeEach(() => store.write(pressures(startMs, 2 * 3600, (index) => index)));

  it('leaves no trace where files were written but not yet in force, and is done again', async () => {
    const before = await hourly();
    await between(async (instance) => {
      const connection = await instance.connect();
      const manifest = await Manifest.open(connection);
      const tails = (await loadTailTables(connection)).filter((table) => table.hourMs === startMs);
      await sealHour({ connection, folder, manifest, valuesAtOnce: 1e6 }, startMs, tails);
      expect(filesOf('seconds')).toHaveLength(1);
      expect(filesOf('minutes')).toHaveLength(1);
      connection.closeSync();
    });
    expect(filesOf('seconds')).toEqual([]);
    expect(filesOf('minutes')).toEqual([]);
    expect(await hourly()).toEqual(before);
    await store.maintain(startMs + day);
    expect(await hourly()).toEqual(before);
    expect(filesOf('seconds')).toHaveLength(2);
    expect(filesOf('minutes')).toHaveLength(2);
    await store.maintain(startMs + day + 2 * hour);
    expect(await hourly()).toEqual(before);
    expect(filesOf('minutes')).toHaveLength(1);
  });

  it('leaves no half-written file', async () => {
    let name = '';
    await between(async (instance) => {
      const connection = await instance.connect();
      name = await (
        await Manifest.open(connection)
      ).announce({ kind: 'seconds', startMs, spanMs: hour, group: null, width: 3 });
      writeFileSync(join(folder, `${name}.writing`), 'half');
      connection.closeSync();
    });
    expect(name).not.toBe('');
    expect(existsSync(join(folder, `${name}.writing`))).toBe(false);
    expect((await hourly()).count).toEqual([3600, 3600]);
  });

  it('never deletes a file that the store did not name', async () => {
    writeFileSync(join(folder, 'seconds', 'someone-elses.parquet'), 'x');
    await store.maintain(startMs + day);
    await between(() => Promise.resolve());
    expect(filesOf('seconds')).toContain('someone-elses.parquet');
  });
});

describe('a sealed file', () => {
  it('holds rows in unit order, merged, with NULL for nothing and quality beside', async () => {
    await store.write(
      rowsOf([
        { holder: 1, atMs: startMs, values: [7] },
        { holder: 0, atMs: startMs + second, values: [3, null, 4], quality: [2, 3, 1] },
        { holder: 0, atMs: startMs, values: [1, 2, null] },
      ]),
    );
    await store.write(rowsOf([{ holder: 0, atMs: startMs, values: [null, 5, null], quality: [0, 2, 0] }]));
    await store.maintain(startMs + day);
    const [name] = filesOf('seconds');
    const instance = await DuckDBInstance.create(':memory:');
    const connection = await instance.connect();
    const read = await connection.runAndReadAll(
      `SELECT holder, second, p0, p1, p2, quality FROM read_parquet('${join(folder, 'seconds', name ?? '')}')`,
    );
    const rows = read
      .getRows()
      .map(([holder, at, p0, p1, p2, quality]) => [
        holder,
        Number(at) - startMs,
        [p0, p1, p2],
        quality instanceof DuckDBBlobValue ? [...quality.bytes] : null,
      ]);
    expect(rows).toEqual([
      [0, 0, [1, 5, null], [1, 2, 0]],
      [0, 1000, [3, null, 4], [2, 3, 1]],
      [1, 0, [7, null, null], null],
    ]);
    connection.closeSync();
    instance.closeSync();
  });
});

describe('a day of minutes that was folded into one file', () => {
  beforeEach(async () => {
    await store.write(pressures(startMs, 2 * 3600, () => 1));
    await store.write(rowsOf([{ holder: 1, atMs: startMs + hour, values: [7] }]));
    await store.maintain(startMs + day + 2 * hour);
    expect(filesOf('minutes')).toHaveLength(1);
  });
  const ofTheFirstHour = async () => (await hourly()).max[0];

  it('gives way to minutes of rows that came later, and takes them in a day after', async () => {
    await store.write(pressures(startMs + 90 * second, 1, () => 50));
    await store.maintain(startMs + day + 3 * hour);
    await store.maintain(startMs + day + 4 * hour);
    expect(filesOf('minutes')).toHaveLength(2);
    const check = async () => {
      expect(await hourly()).toMatchObject({
        min: [1, 1],
        mean: [1 + 49 / 3600, 1],
        max: [50, 1],
        count: [3600, 3600],
      });
      const other = { holder: "hall 'A', west=1", point: 'supply.pressure', unitOfMeasure: 'Pa' };
      const found = plain(await store.read({ ...other, fromMs: startMs, toMs: startMs + 2 * hour, buckets: 2 }));
      expect(found).toMatchObject({ mean: [null, 7], count: [0, 1] });
    };
    await check();
    await store.maintain(startMs + 2 * day + 2 * hour);
    expect(filesOf('minutes')).toHaveLength(1);
    await check();
  });

  it('takes in points that the layout did not have when it was folded', async () => {
    const [unit, ...others] = layout.holders;
    const columns = [...(unit?.columns ?? []), { point: 'pump.speed', unitOfMeasure: '1' }];
    await store.useLayout({ holders: [{ id: 'unit-1', columns }, ...others] });
    await store.write(rowsOf([{ holder: 0, atMs: startMs, values: [9, null, null, 5] }]));
    for (const hours of [3, 4, 27]) await store.maintain(startMs + day + hours * hour);
    expect(filesOf('minutes')).toHaveLength(1);
    expect(await ofTheFirstHour()).toBe(9);
    const speed = { holder: 'unit-1', point: 'pump.speed', unitOfMeasure: '1' };
    const found = await store.read({ ...speed, fromMs: startMs, toMs: startMs + 2 * hour, buckets: 2 });
    expect(plain(found)).toMatchObject({ mean: [5, null], count: [1, 0] });
  });
});

describe('an hour too big to be put in unit order at once', () => {
  it('is sealed in slices of whole minutes that a reader does not see, and that late rows go into', async () => {
    // 3,600 rows of 3 places are 10,800 values: two slices of half an hour.
    await store.close();
    store = await DuckDbHistoryStore.open({ folder, valuesAtOnce: 10_000 });
    await store.useLayout(layout);
    await store.write(pressures(startMs, 3600, (index) => index / 8));
    await store.maintain(startMs + 2 * hour);
    expect(filesOf('seconds')).toHaveLength(2);
    const read = (fromMs: number, toMs: number, buckets: number) =>
      store.read({ ...pressure, fromMs: startMs + fromMs, toMs: startMs + toMs, buckets }).then(plain);
    const middle = () => read(30 * minute - second, 30 * minute + second, 2);
    expect(await middle()).toMatchObject({ mean: [1799 / 8, 1800 / 8], count: [1, 1] });
    expect(await read(0, hour, 6)).toMatchObject({ max: [599, 1199, 1799, 2399, 2999, 3599].map((at) => at / 8) });
    await store.write(pressures(startMs + 30 * minute, 1, () => 7));
    for (const hours of [3, 4]) await store.maintain(startMs + hours * hour);
    expect(filesOf('seconds')).toHaveLength(2);
    expect(await middle()).toMatchObject({ mean: [1799 / 8, 7], count: [1, 1] });
    expect(await read(20 * minute, 40 * minute, 2)).toMatchObject({ min: [150, 7], count: [600, 600] });
  });
});

describe('retention', () => {
  const days = { rawDays: 1, rawBytes: 10e9, minuteDays: 3 };
  const reopen = async (retention: typeof days) => {
    await store.close();
    store = await DuckDbHistoryStore.open({ folder, retention });
    await store.useLayout(layout);
  };
  const countOf = async (fromMs: number, toMs: number, buckets: number) => {
    const found = await store.read({ ...pressure, fromMs, toMs, buckets });
    return { resolution: found.resolution, count: plain(found).count };
  };

  it('deletes whole hours of seconds by age, after which narrow buckets are made of minutes', async () => {
    await reopen(days);
    await store.write(pressures(startMs, 3600, (index) => index));
    await store.maintain(startMs + 2 * hour);
    expect(await countOf(startMs, startMs + 4 * minute, 8)).toMatchObject({
      resolution: 'second',
      count: Array<number>(8).fill(30),
    });
    await store.maintain(startMs + day + hour);
    expect(filesOf('seconds')).toEqual([]);
    expect(await countOf(startMs, startMs + 4 * minute, 8)).toMatchObject({
      resolution: 'minute',
      count: [60, 0, 60, 0, 60, 0, 60, 0],
    });
  });

  it('deletes the oldest hours while there are too many bytes', async () => {
    await reopen({ ...days, rawBytes: 1 });
    await store.write(pressures(startMs, 2 * 3600, (index) => index));
    await store.maintain(startMs + 4 * hour);
    await store.maintain(startMs + 4 * hour);
    expect(filesOf('seconds')).toEqual([]);
    expect((await countOf(startMs, startMs + 2 * hour, 2)).count).toEqual([3600, 3600]);
  });

  it('leaves out rows whose seconds were already deleted and says so in health', async () => {
    await reopen(days);
    await store.write(pressures(startMs, 60, (index) => index));
    await store.maintain(startMs + 2 * hour);
    await store.maintain(startMs + 2 * day);
    await store.write(pressures(startMs, 5, () => 999));
    expect(store.health()).toMatchObject({ state: 'ok' });
    expect(store.health().message).toContain('5 rows older');
    const found = plain(await store.read({ ...pressure, fromMs: startMs, toMs: startMs + hour, buckets: 1 }));
    expect([found.max, found.count]).toEqual([[59], [60]]);
  });

  it('deletes whole days of minutes by age', async () => {
    await reopen(days);
    await store.write(pressures(startMs, 60, (index) => index));
    await store.maintain(startMs + 2 * hour);
    await store.maintain(startMs + 4 * day - 1);
    expect(filesOf('minutes')).toHaveLength(1);
    await store.maintain(startMs + 4 * day);
    expect(filesOf('minutes')).toEqual([]);
    expect((await countOf(startMs, startMs + hour, 1)).count).toEqual([0]);
  });

  it('merges late rows into minutes before it deletes the seconds they need', async () => {
    await reopen(days);
    await store.write(pressures(startMs, 60, () => 1));
    await store.maintain(startMs + 2 * hour);
    await store.write(pressures(startMs + 30 * second, 1, () => 61));
    await store.maintain(startMs + 2 * day);
    const found = plain(await store.read({ ...pressure, fromMs: startMs, toMs: startMs + hour, buckets: 1 }));
    expect(found).toMatchObject({ min: [1], mean: [2], max: [61], count: [60] });
  });
});

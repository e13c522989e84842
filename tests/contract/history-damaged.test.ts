import { readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import { temporaryFolder, type TemporaryFolder } from '../helpers/temporary-folder';
import { hour, layout, plain, pressure, pressures, second, startMs } from './history-samples';

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

describe('a sealed file that is damaged', () => {
  const countOf = async (fromMs: number, toMs: number) =>
    plain(await store.read({ ...pressure, fromMs, toMs, buckets: 60 })).count.reduce<number>(
      (sum, count) => sum + (count ?? 0),
      0,
    );
  let damaged: string;
  let sound: Buffer;
  let other: string;
  beforeEach(async () => {
    await store.write(pressures(startMs, 2 * 3600, (index) => index));
    await store.maintain(startMs + 4 * hour);
    damaged = `seconds/${filesOf('seconds')[0]}`;
    other = `seconds/${filesOf('seconds')[1]}`;
    sound = readFileSync(join(folder, damaged));
    writeFileSync(join(folder, damaged), 'not a Parquet file any more');
  });

  it('is named by a read of its hour, and other hours are read as before', async () => {
    await expect(countOf(startMs, startMs + hour)).rejects.toMatchObject({
      code: 'HISTORY_READ_FAILED',
      message: expect.stringContaining(damaged) as unknown,
    });
    expect(await countOf(startMs + hour, startMs + 2 * hour)).toBe(3600);
  });

  it('is told in health from the next start on, or from the next maintenance, until it is put back', async () => {
    const whole = readFileSync(join(folder, other));
    expect(store.health().damaged).toBeNull();
    await store.maintain(startMs + 4 * hour);
    expect(store.health()).toMatchObject({ state: 'ok', damaged: expect.stringContaining(damaged) as unknown });
    await store.close();
    rmSync(join(folder, other));
    store = await DuckDbHistoryStore.open({ folder });
    expect(store.health().damaged).toContain(other);
    writeFileSync(join(folder, other), whole);
    writeFileSync(join(folder, damaged), sound);
    await store.maintain(startMs + 4 * hour);
    expect(store.health().damaged).toBeNull();
  });

  it('of its own length is told once a read was refused, and left as it is', async () => {
    const flipped = Buffer.from(sound);
    flipped.fill(0xff, flipped.length - 200, flipped.length - 8);
    writeFileSync(join(folder, damaged), flipped);
    await store.close();
    store = await DuckDbHistoryStore.open({ folder });
    await store.useLayout(layout);
    expect(store.health().damaged).toBeNull();
    await expect(countOf(startMs, startMs + hour)).rejects.toMatchObject({ code: 'HISTORY_READ_FAILED' });
    expect(store.health().damaged).toContain(damaged);
    await store.maintain(startMs + 4 * hour);
    expect(store.health().damaged).toContain(damaged);
    expect(readFileSync(join(folder, damaged))).toEqual(flipped);
    writeFileSync(join(folder, damaged), sound);
    // The engine knows a changed file by its time, to the second.
    utimesSync(join(folder, damaged), 1, 1);
    await store.maintain(startMs + 4 * hour);
    expect(store.health().damaged).toBeNull();
    expect(await countOf(startMs, startMs + hour)).toBe(3600);
  });

  it('holds up the late rows of its own hour, aloud, and neither other hours nor new rows', async () => {
    await store.write(pressures(startMs + second, 1, () => 5));
    await store.maintain(startMs + 4 * hour);
    await store.write(pressures(startMs + 3 * hour, 60, (index) => index));
    await expect(store.maintain(startMs + 6 * hour)).rejects.toMatchObject({
      code: 'HISTORY_MAINTAIN_FAILED',
      message: expect.stringContaining(damaged) as unknown,
    });
    // Rows are taken all the while: nobody is to hear that history is not written.
    expect(store.health()).toMatchObject({ state: 'ok', message: null });
    expect(filesOf('seconds').filter((name) => name.startsWith('2025-06-01T0300'))).toHaveLength(1);
    expect(filesOf('seconds').filter((name) => name.endsWith('.writing'))).toEqual([]);
    expect(await countOf(startMs + 3 * hour, startMs + 4 * hour)).toBe(60);
  });
});

/** A byte of the values of a sealed file changed so that the engine reads on as if nothing were. */
describe('a sealed file in which a disk changed values', () => {
  const read = () => store.read({ ...pressure, fromMs: startMs, toMs: startMs + hour, buckets: 60 });
  const readSeconds = () =>
    store.readSeconds({ holder: 'unit-1', columns: [pressure], fromMs: startMs, toMs: startMs + hour });
  const reopen = async (): Promise<void> => {
    await store.close();
    store = await DuckDbHistoryStore.open({ folder });
    await store.useLayout(layout);
  };
  let name: string;
  let sound: Buffer;
  let spoilt: Buffer;
  beforeEach(async () => {
    await store.write(pressures(startMs, 3600, (index) => Math.sin(index)));
    await store.maintain(startMs + 4 * hour);
    name = `seconds/${filesOf('seconds')[0]}`;
    sound = readFileSync(join(folder, name));
    const before = JSON.stringify(plain(await read()));
    let passes = false;
    for (let at = 200; !passes && at < sound.length - 1000; at += 101) {
      spoilt = Buffer.from(sound);
      spoilt[at] = (spoilt[at] ?? 0) ^ 0x01;
      writeFileSync(join(folder, name), spoilt);
      await reopen();
      passes = await read().then(
        (found) => JSON.stringify(plain(found)) !== before,
        () => false,
      );
    }
    expect(passes).toBe(true);
  });

  it('is told with the next maintenance, and read no more until it is put back', async () => {
    await store.maintain(startMs + 4 * hour);
    expect(store.health().damaged).toContain(name);
    for (const reading of [read, readSeconds])
      await expect(reading()).rejects.toMatchObject({
        code: 'HISTORY_READ_FAILED',
        message: expect.stringContaining(name) as unknown,
      });
    writeFileSync(join(folder, name), sound);
    utimesSync(join(folder, name), 1, 1);
    await store.maintain(startMs + 4 * hour);
    expect(store.health().damaged).toBeNull();
    expect((await read()).count.reduce((sum, count) => sum + count, 0)).toBe(3600);
    expect((await readSeconds()).quality[0]?.reduce((sum, mark) => sum + mark, 0)).toBe(3600);
  });

  it('is not sealed anew with late rows, which wait', async () => {
    await store.write(pressures(startMs + second, 1, () => 5));
    await store.maintain(startMs + 4 * hour);
    await expect(store.maintain(startMs + 6 * hour)).rejects.toMatchObject({
      code: 'HISTORY_MAINTAIN_FAILED',
      message: expect.stringContaining(name) as unknown,
    });
    expect(readFileSync(join(folder, name))).toEqual(spoilt);
    writeFileSync(join(folder, name), sound);
    utimesSync(join(folder, name), 1, 1);
    await store.maintain(startMs + 8 * hour);
    expect(Math.max(...(await read()).max)).toBe(5);
  });
});

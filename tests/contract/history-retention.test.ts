import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import { temporaryFolder, type TemporaryFolder } from '../helpers/temporary-folder';
import { day, hour, layout, plain, pressure, pressures, second, startMs } from './history-samples';

let root: TemporaryFolder;
let folder: string;
let store: DuckDbHistoryStore;

const days = { rawDays: 1, rawBytes: 10e9, minuteDays: 3 };
const open = async (retention = days): Promise<void> => {
  store = await DuckDbHistoryStore.open({ folder, retention });
  await store.useLayout(layout);
};

beforeEach(async () => {
  root = await temporaryFolder();
  folder = join(root.path, 'history');
  await open();
});
afterEach(async () => {
  await store.close();
  await root.stop();
});

const filesOf = (kind: string): string[] => readdirSync(join(folder, kind)).sort();

describe('retention by a time of its own', () => {
  it('removes nothing for its age where nothing is to be, and what there is no room for all the same', async () => {
    const nothing = { atMs: -Infinity, atMostNewest: false };
    await store.write(pressures(startMs, 60, () => 1));
    for (const days of [1, 8, 80]) await store.maintain(startMs + days * day, nothing);
    expect([filesOf('seconds'), filesOf('minutes')].map((files) => files.length)).toEqual([1, 1]);
    await store.close();
    await open({ ...days, rawBytes: 1 });
    await store.maintain(startMs + 80 * day, nothing);
    expect([filesOf('seconds'), filesOf('minutes')].map((files) => files.length)).toEqual([0, 1]);
  });

  it('removes what is too old by the newest row, not by a time that no row has', async () => {
    const atMs = startMs + 80 * day;
    await store.write(pressures(startMs, 60, () => 1));
    await store.maintain(atMs, { atMs, atMostNewest: true });
    await store.write(pressures(startMs + day, 60, () => 1));
    await store.maintain(atMs, { atMs, atMostNewest: true });
    const [first, second] = filesOf('seconds');
    expect([first, second]).not.toContain(undefined);
    await store.write(pressures(startMs + day + hour, 60, () => 1));
    await store.maintain(atMs, { atMs, atMostNewest: true });
    expect(filesOf('seconds')).toEqual([second, expect.any(String)]);
  });
});

describe('retention where a sealed hour is damaged and a late row waits for it', () => {
  const countOf = async (fromMs: number) =>
    plain(await store.read({ ...pressure, fromMs, toMs: fromMs + hour, buckets: 1 })).count;
  const damaged = expect.objectContaining({ code: 'HISTORY_MAINTAIN_FAILED' }) as unknown;
  beforeEach(async () => {
    for (const at of [0, 1, 2]) await store.write(pressures(startMs + at * hour, 60, () => 1));
    await store.maintain(startMs + 4 * hour);
    const [, second] = filesOf('seconds');
    writeFileSync(join(folder, 'seconds', second ?? ''), 'not a Parquet file any more');
  });

  it('removes every hour at its time, that hour with its late row too, and is then well again', async () => {
    await store.write(pressures(startMs + hour + second, 1, () => 5));
    await expect(store.maintain(startMs + day + hour)).resolves.toBeUndefined();
    expect(filesOf('seconds')).toHaveLength(2);
    await expect(store.maintain(startMs + day + 2 * hour)).rejects.toEqual(damaged);
    expect(filesOf('seconds')).toHaveLength(1);
    await store.maintain(startMs + day + 2 * hour);
    expect(await countOf(startMs + hour)).toEqual([60]);
    expect(store.health().damaged).toBeNull();
    await store.maintain(startMs + day + 3 * hour);
    expect(filesOf('seconds')).toEqual([]);
    await store.close();
    await open();
    await store.write(pressures(startMs + hour + second, 1, () => 5));
    expect(store.health().message).toContain('1 rows older');
    expect(await countOf(startMs + hour)).toEqual([60]);
  });
});

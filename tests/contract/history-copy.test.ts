import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { copyHistory } from '../../backend/src/connections/history-store/embedded/copy-history';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import { stopAfterEach } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { hour, layout, minute, plain, pressure, pressures, second, startMs } from './history-samples';
import { bundle, type Bundle } from './journal-bundle';

const keep = stopAfterEach();
let child: Bundle;
let folder: string;
beforeAll(async () => {
  child = await bundle(new URL('./history-kill.child.ts', import.meta.url));
});
afterAll(() => child.remove());
beforeEach(async () => {
  folder = keep(await temporaryFolder()).path;
});

/** Lets another process write and seal without a pause, copies at `line`, and says how many writes were confirmed before. */
async function copiedAt(line: string, from: string, to: string): Promise<number> {
  const writer = spawn(process.execPath, [child.file, from], { stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = once(writer, 'exit');
  let confirmed = 0;
  let before: number | null = null;
  let copying: Promise<void> | null = null;
  for await (const printed of createInterface({ input: writer.stdout })) {
    if (printed.startsWith('confirmed ')) confirmed++;
    if (printed !== line || copying !== null) continue;
    before = confirmed;
    copying = copyHistory({ from, to, attempts: 400, pauseMs: 5 })
      .then((copy) => expect(copy).toEqual({ found: true, missing: [] }))
      .finally(() => void writer.kill('SIGKILL'));
  }
  await copying;
  await ended;
  return before ?? Number.NaN;
}

describe('a copy of history', () => {
  it.each(['confirmed 4', 'sealing 2', 'sealed 3', 'confirmed 40'])(
    'taken at "%s" while another process writes and seals holds all that was confirmed, each once',
    async (line) => {
      const to = join(folder, 'copy');
      const confirmed = await copiedAt(line, join(folder, 'written'), to);
      expect(confirmed).toBeGreaterThan(0);
      expect((await readdir(to)).filter((name) => name.endsWith('.wal'))).toEqual([]);
      const store = await DuckDbHistoryStore.open({ folder: to });
      for (let write = 0; write < confirmed; write++) {
        const fromMs = startMs + write * 10 * minute;
        const found = plain(await store.read({ ...pressure, fromMs, toMs: fromMs + 30 * second, buckets: 30 }));
        expect(found.mean).toEqual(Array.from({ length: 30 }, (_, index) => write * 30 + index));
        expect(found.count).toEqual(Array<number>(30).fill(1));
      }
      await store.close();
    },
  );

  it('tells a sealed file that the history names and that is lost, and keeps the rest', async () => {
    const from = join(folder, 'written');
    const store = await DuckDbHistoryStore.open({ folder: from });
    await store.useLayout(layout);
    await store.write(pressures(startMs, 5, (index) => index));
    await store.write(pressures(startMs + hour, 5, (index) => 10 + index));
    await store.maintain(startMs + 3 * hour);
    await store.close();
    const [lost = ''] = (await readdir(join(from, 'seconds'))).sort();
    await rm(join(from, 'seconds', lost));

    const to = join(folder, 'copy');
    expect(await copyHistory({ from, to, pauseMs: 5 })).toEqual({ found: true, missing: [`seconds/${lost}`] });
    const copy = await DuckDbHistoryStore.open({ folder: to });
    const fromMs = startMs + hour;
    const found = plain(await copy.read({ ...pressure, fromMs, toMs: fromMs + 5 * second, buckets: 5 }));
    expect(found.mean).toEqual([10, 11, 12, 13, 14]);
    await copy.close();
  });

  it('says that there is none, and refuses a file that is no history', async () => {
    const to = join(folder, 'copy');
    expect(await copyHistory({ from: join(folder, 'absent'), to })).toEqual({ found: false, missing: [] });
    await mkdir(join(folder, 'other', 'history.duckdb'), { recursive: true });
    await expect(copyHistory({ from: join(folder, 'other'), to, attempts: 2, pauseMs: 1 })).rejects.toThrow(
      'HISTORY_COPY_FAILED',
    );
  });
});

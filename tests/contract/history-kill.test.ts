import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import { hour, minute, plain, pressure, second, startMs } from './history-samples';
import { bundle, type Bundle } from './journal-bundle';

let child: Bundle;
beforeAll(async () => {
  child = await bundle(new URL('./history-kill.child.ts', import.meta.url));
});
afterAll(() => child.remove());

/** Starts a writer, kills it as soon as it has printed `line`, and says how many writes it had confirmed. */
async function confirmedUntil(line: string, folder: string): Promise<number> {
  const writer = spawn(process.execPath, [child.file, folder], { stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = once(writer, 'exit');
  let confirmed = 0;
  for await (const printed of createInterface({ input: writer.stdout })) {
    if (printed.startsWith('confirmed ')) confirmed++;
    if (printed === line) writer.kill('SIGKILL');
  }
  expect((await ended)[1]).toBe('SIGKILL');
  return confirmed;
}

/** Every confirmed row is there once, by value, and whatever else is there is a whole write. */
async function expectWhole(store: DuckDbHistoryStore, confirmed: number): Promise<void> {
  for (let write = 0; write < confirmed; write++) {
    const fromMs = startMs + write * 10 * minute;
    const found = plain(await store.read({ ...pressure, fromMs, toMs: fromMs + 30 * second, buckets: 30 }));
    expect(found.mean).toEqual(Array.from({ length: 30 }, (_, index) => write * 30 + index));
    expect(found.count).toEqual(Array<number>(30).fill(1));
  }
  const hours = Math.ceil(confirmed / 6) + 1;
  const all = plain(
    await store.read({ ...pressure, fromMs: startMs, toMs: startMs + hours * hour, buckets: hours * 6 }),
  );
  expect(all.count.slice(0, confirmed)).toEqual(Array<number>(confirmed).fill(30));
  expect(all.min.slice(0, confirmed)).toEqual(Array.from({ length: confirmed }, (_, write) => write * 30));
  for (const count of all.count.slice(confirmed)) expect([0, 30]).toContain(count);
}

describe('an embedded history store whose process is killed', () => {
  it.each(['confirmed 0', 'confirmed 4', 'sealing 2', 'sealed 1', 'confirmed 13', 'sealing 3', 'sealed 4'])(
    'holds every confirmed row once after SIGKILL at "%s"',
    async (line) => {
      const folder = join(child.folder, line.replace(' ', '-'));
      const confirmed = await confirmedUntil(line, folder);
      expect(confirmed).toBeGreaterThan(0);
      const store = await DuckDbHistoryStore.open({ folder });
      await expectWhole(store, confirmed);
      await store.maintain(startMs + 2000 * hour);
      await store.close();
    },
  );

  it('seals what a killed process left and holds it still', async () => {
    const folder = join(child.folder, 'sealed-later');
    const confirmed = await confirmedUntil('sealing 2', folder);
    const store = await DuckDbHistoryStore.open({ folder });
    await store.maintain(startMs + 48 * hour);
    await expectWhole(store, confirmed);
    await store.close();
  });
});

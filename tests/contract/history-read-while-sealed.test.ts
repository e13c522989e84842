import { join } from 'node:path';
import { expect, it } from 'vitest';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import { stopAfterEach } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { hour, rowsOf, startMs } from './history-samples';

const keep = stopAfterEach();
const hours = 12;
const query = { holder: 'unit-1', point: 'loop.flow', unitOfMeasure: 'm3/s' };
const span = { ...query, fromMs: startMs, toMs: startMs + hours * hour };

it('answers who reads an hour in the moment in which it is sealed, before and after', async () => {
  const folder = join(keep(await temporaryFolder()).path, 'history');
  const store = await DuckDbHistoryStore.open({ folder });
  keep({ stop: () => store.close() });
  const { holder, ...column } = query;
  await store.useLayout({ holders: [{ id: holder, columns: [column] }] });
  for (let told = 0; told < hours; told++)
    await store.write(rowsOf([{ holder: 0, atMs: startMs + told * hour, values: [told] }]));

  let sealing = true;
  const sealed = store.maintain(startMs + (hours + 2) * hour).finally(() => (sealing = false));
  // Several begin at once, so that while a seal waits for one of them others wait for the seal.
  const readers = Array.from({ length: 4 }, async () => {
    for (let reads = 0; ; reads++) {
      const { mean } = await store.read({ ...span, buckets: hours });
      expect([...mean]).toEqual(Array.from({ length: hours }, (_, told) => told));
      if (!sealing) return reads;
    }
  });
  const [, ...reads] = await Promise.all([sealed, ...readers]);
  expect(Math.min(...reads)).toBeGreaterThan(0);
});

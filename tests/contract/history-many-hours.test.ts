import { join } from 'node:path';
import { expect, it } from 'vitest';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import type { HistoryLayout } from '../../backend/src/ports/history-store';
import { stopAfterEach } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { hour, rowsOf, startMs } from './history-samples';

const keep = stopAfterEach();
const width = 130;
const hours = 80;
/** So little that the tables of some forty hours fill it, however few rows each has. */
const limits = { threads: 1, memoryMb: 96 };
const layout: HistoryLayout = {
  holders: [
    {
      id: 'unit-1',
      columns: Array.from({ length: width }, (_, column) => ({ point: `point.${column}`, unitOfMeasure: 'Pa' })),
    },
  ],
};

it('takes a row of each of many hours that a gateway tells late, and opens again before they are sealed', async () => {
  const folder = join(keep(await temporaryFolder()).path, 'history');
  const first = await DuckDbHistoryStore.open({ folder, limits });
  await first.useLayout(layout);
  for (let told = 0; told < hours; told++) {
    const values = Array<number>(width).fill(told);
    await first.write(rowsOf([{ holder: 0, atMs: startMs + told * hour, values }]));
  }
  await first.close();
  const second = await DuckDbHistoryStore.open({ folder, limits });
  await second.useLayout(layout);
  const query = { holder: 'unit-1', point: 'point.7', unitOfMeasure: 'Pa', fromMs: startMs };
  const kept = await second.read({ ...query, toMs: startMs + hours * hour, buckets: hours });
  expect([...kept.mean]).toEqual(Array.from({ length: hours }, (_, told) => told));
  await second.close();
});

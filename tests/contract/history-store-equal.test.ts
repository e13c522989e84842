import { join } from 'node:path';
import { expect, it } from 'vitest';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import { InfluxHistoryStore } from '../../backend/src/connections/history-store/influx/influx-history-store';
import type { HistoryBuckets, HistoryStore } from '../../backend/src/ports/history-store';
import { startInfluxd } from '../helpers/influxd';
import { suiteNeeding } from '../helpers/requirements';
import { temporaryFolder } from '../helpers/temporary-folder';
import {
  day,
  flow,
  hour,
  layout,
  minute,
  plain,
  pressure,
  pressures,
  rowsOf,
  second,
  startMs,
} from './history-samples';

/** Two hours with gaps, a late correction, and values of ordinary precision: sums differ only by rounding. */
async function fill(store: HistoryStore): Promise<void> {
  await store.useLayout(layout);
  const value = (index: number) =>
    index % 97 === 0 ? null : 90_000 + 137.31 * Math.sin(index / 211) + (index % 7) * 0.13;
  await store.write(pressures(startMs, 2 * 3600, value));
  await store.maintain(startMs + hour + 20 * minute);
  await store.write(rowsOf([{ holder: 0, atMs: startMs + 61 * second, values: [12_345.678, 0.0123, null] }]));
}

const queries = [
  { name: '10 s in 5', key: pressure, fromMs: startMs + 55 * second, toMs: startMs + 65 * second, buckets: 5 },
  { name: '1 h in 7, from an odd ms', key: pressure, fromMs: startMs + 1234, toMs: startMs + hour + 1234, buckets: 7 },
  { name: '2 h in 12 (minutes)', key: pressure, fromMs: startMs, toMs: startMs + 2 * hour, buckets: 12 },
  { name: '1 day in 24 (minutes)', key: pressure, fromMs: startMs - hour, toMs: startMs - hour + day, buckets: 24 },
  { name: 'flow, written once', key: flow, fromMs: startMs, toMs: startMs + 2 * minute, buckets: 4 },
];

const figures = ['min', 'mean', 'max', 'count'] as const;

function expectEqual(name: string, embedded: HistoryBuckets, influx: HistoryBuckets): void {
  expect([influx.bucketMs, influx.resolution], name).toEqual([embedded.bucketMs, embedded.resolution]);
  const [left, right] = [plain(embedded), plain(influx)];
  expect({ ...right, mean: null }, name).toEqual({ ...left, mean: null });
  right.mean.forEach((mean, bucket) => {
    const other = left.mean[bucket] ?? null;
    // The order of summation is each engine's own: a few units in the last place.
    if (mean === null || other === null) expect(mean, name).toBe(other);
    else expect(Math.abs(mean - other), name).toBeLessThanOrEqual(1e-12 * Math.abs(other));
  });
}

function print(name: string, embedded: HistoryBuckets, influx: HistoryBuckets): void {
  const [left, right] = [plain(embedded), plain(influx)];
  console.log(`history, ${name}: bucket ${embedded.bucketMs} ms, ${embedded.resolution}`);
  left.start.forEach((_, bucket) => {
    if (left.count[bucket] === 0 && right.count[bucket] === 0) return;
    const row = (buckets: typeof left) => figures.map((figure) => `${figure} ${buckets[figure][bucket]}`).join('  ');
    console.log(`  ${bucket}: embedded ${row(left)}\n  ${bucket}: InfluxDB ${row(right)}`);
  });
}

suiteNeeding(['influxdb'], 'the embedded store and InfluxDB', () => {
  it('give equal numbers for the same rows, before and after maintenance', async () => {
    const server = await startInfluxd();
    const folder = await temporaryFolder();
    const embedded = await DuckDbHistoryStore.open({ folder: join(folder.path, 'history') });
    const url = `${server.url}/equal`;
    const influx = await InfluxHistoryStore.open({
      url,
      queueFolder: join(folder.path, 'queue'),
      rawDays: 36_500,
      minuteDays: 36_500,
    });
    try {
      for (const store of [embedded, influx]) await fill(store);
      for (const step of ['before', 'after']) {
        for (const { name, key, ...period } of queries) {
          const query = { ...key, ...period };
          const [left, right] = [await embedded.read(query), await influx.read(query)];
          expectEqual(`${name}, ${step}`, left, right);
          if (step === 'after') print(name, left, right);
        }
        for (const store of [embedded, influx]) await store.maintain(startMs + day);
      }
    } finally {
      await embedded.close();
      await influx.close();
      await server.stop();
      await folder.stop();
    }
  });
});

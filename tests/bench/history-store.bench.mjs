/**
 * The embedded history store as it ships, in its own thread: commits at 5,000 units × 80 points, the seal of what
 * was written, and one point out of a day of 15 units × 80 points. Bounded: 48 + 104 million samples.
 *
 * node tests/bench/history-store.bench.mjs [commits | day]
 */
import { mkdtempSync, readdirSync, rmSync, statSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));
const points = 80;
const hour = 3_600_000;
const startMs = Date.UTC(2025, 5, 1);
const entry = 'backend/src/connections/history-store/embedded/duckdb-history-store.ts';

async function loadStore(folder) {
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  await build({
    root,
    configFile: false,
    logLevel: 'silent',
    ssr: { noExternal: [/^@ebbline\//] },
    build: {
      ssr: join(root, entry),
      outDir: join(folder, 'out'),
      rolldownOptions: { output: { entryFileNames: 'store.mjs' } },
    },
  });
  return (await import(pathToFileURL(join(folder, 'out', 'store.mjs')).href)).DuckDbHistoryStore;
}

const layoutOf = (units) => ({
  holders: Array.from({ length: units }, (_, unit) => ({
    id: `unit-${unit}`,
    columns: Array.from({ length: points }, (_, point) => ({ point: `point.${point}`, unitOfMeasure: '1' })),
  })),
});

let state = 1;
const random = () => (state = (state * 1664525 + 1013904223) >>> 0) / 2 ** 32;

/** `seconds` of all units; half the points at a sensor's resolution, half with full noise. */
function batchOf(units, fromMs, seconds) {
  const count = units * seconds;
  const values = new Float64Array(count * points);
  values.forEach((_, at) => {
    const value = 20 + (at % points) + Math.sin(fromMs / 3e6 + (at % 97)) + random() * 0.2;
    values[at] = at % points < points / 2 ? Math.round(value * 100) / 100 : value;
  });
  return {
    count,
    holder: Int32Array.from({ length: count }, (_, row) => row % units),
    secondMs: Float64Array.from({ length: count }, (_, row) => fromMs + Math.floor(row / units) * 1000),
    offset: Int32Array.from({ length: count }, (_, row) => row * points),
    values,
    quality: new Uint8Array(count * points).fill(1),
  };
}

const quantile = (values, part) => [...values].sort((a, b) => a - b)[Math.floor((values.length - 1) * part)] ?? NaN;
const bytesIn = (folder) => readdirSync(folder).reduce((sum, name) => sum + statSync(join(folder, name)).size, 0);

async function timed(job) {
  const started = performance.now();
  const cpu = process.cpuUsage();
  const value = await job();
  const used = process.cpuUsage(cpu);
  return { value, ms: performance.now() - started, cpuMs: (used.user + used.system) / 1000 };
}

async function benchCommits(Store, folder, { units = 5000, commits = 60 } = {}) {
  const store = await Store.open({ folder });
  await store.useLayout(layoutOf(units));
  const writes = [];
  for (let commit = 0; commit < commits; commit++) {
    const batch = batchOf(units, startMs + commit * 2000, 2);
    writes.push(await timed(() => store.write(batch)));
  }
  const samples = units * points * 2 * commits;
  const toMs = startMs + commits * 2000;
  const query = { holder: 'unit-77', point: 'point.7', unitOfMeasure: '1', fromMs: startMs, toMs, buckets: 1000 };
  const tailRead = await timed(() => store.read(query));
  const seal = await timed(() => store.maintain(startMs + 2 * hour));
  const sealed = bytesIn(join(folder, 'seconds'));
  const sealedRead = await timed(() => store.read(query));
  const rss = process.memoryUsage().rss;
  await store.close();
  const ms = writes.map((write) => write.ms);
  const cpu = writes.reduce((sum, write) => sum + write.cpuMs, 0);
  console.log(`history store, ${units} units × ${points} points, 2 s a commit, ${commits} commits:`);
  console.log(
    `  commit ${quantile(ms, 0.5).toFixed(0)} ms (p90 ${quantile(ms, 0.9).toFixed(0)}, worst ${quantile(ms, 1).toFixed(0)}), CPU ${(cpu / commits).toFixed(0)} ms`,
  );
  console.log(
    `  ${(samples / cpu / 1000).toFixed(1)} M samples a CPU-second; one point from the tail ${tailRead.ms.toFixed(0)} ms, sealed ${sealedRead.ms.toFixed(0)} ms`,
  );
  console.log(
    `  seal ${seal.ms.toFixed(0)} ms, CPU ${((seal.cpuMs / samples) * 1e6).toFixed(0)} ms a million samples, ${(sealed / samples).toFixed(2)} B a sample; memory ${(rss / 1e6).toFixed(0)} MB`,
  );
}

async function benchDay(Store, folder, { units = 15 } = {}) {
  let store = await Store.open({ folder });
  await store.useLayout(layoutOf(units));
  for (let hours = 0; hours < 24; hours++) {
    for (let part = 0; part < 12; part++) {
      await store.write(batchOf(units, startMs + hours * hour + part * 300_000, 300));
    }
    await store.maintain(startMs + (hours + 1) * hour);
  }
  const seal = await timed(() => store.maintain(startMs + 25 * hour));
  await store.close();
  store = await Store.open({ folder });
  const key = { holder: 'unit-1', point: 'point.7', unitOfMeasure: '1', fromMs: startMs, toMs: startMs + 24 * hour };
  const reads = [];
  for (let read = 0; read < 7; read++) reads.push(await timed(() => store.read({ ...key, buckets: 1000 })));
  const minutes = await timed(() => store.read({ ...key, buckets: 144 }));
  const counted = reads[0].value.count.reduce((sum, count) => sum + count, 0);
  const samples = units * points * 86_400;
  console.log(`history store, one day of ${units} units × ${points} points (${(samples / 1e6).toFixed(0)} M samples):`);
  console.log(
    `  24 h of one point (${counted} seconds) to 1,000 buckets: cold ${reads[0].ms.toFixed(0)} ms, warm ${quantile(
      reads.slice(1).map((read) => read.ms),
      0.5,
    ).toFixed(0)} ms; 144 buckets of minutes ${minutes.ms.toFixed(0)} ms`,
  );
  console.log(
    `  seconds ${(bytesIn(join(folder, 'seconds')) / samples).toFixed(2)} B a sample, minutes ${(bytesIn(join(folder, 'minutes')) / samples).toFixed(3)}; the last hour's seal ${seal.ms.toFixed(0)} ms`,
  );
  await store.close();
}

/** Prints the figures as they are. */
export async function benchHistoryStore(part) {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-'));
  try {
    const Store = await loadStore(folder);
    if (part !== 'day') await benchCommits(Store, join(folder, 'commits'));
    if (part !== 'commits') await benchDay(Store, join(folder, 'day'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await benchHistoryStore(process.argv[2]);
}

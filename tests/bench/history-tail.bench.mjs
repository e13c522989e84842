/**
 * Which engine takes the newest history? 5,000 units × 80 points, two seconds a commit, on a file, with a reader of
 * one unit's one point beside. Prints a line a candidate; the plain log (write and fsync, no reader) is the floor
 * that the others are ratios of. Bounded: 25 commits a candidate, 20 million samples.
 *
 * node tests/bench/history-tail.bench.mjs [commits] [units]
 */
import { closeSync, fsyncSync, mkdtempSync, openSync, readdirSync, rmSync, statSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { BIGINT, DOUBLE, DuckDBDataChunk, DuckDBInstance, INTEGER } from '@duckdb/node-api';
import Database from 'libsql';

const points = 80;
const secondsPerCommit = 2;
const columns = Array.from({ length: points }, (_, point) => `p${point}`);

/** A linear congruential generator (Numerical Recipes' constants): the same numbers each run. */
function generator(seed) {
  let state = seed;
  return () => (state = (state * 1664525 + 1013904223) >>> 0) / 2 ** 32;
}

/** Half the points at a sensor's resolution, half with full noise, as derived points have. */
function makeBatches(units) {
  const random = generator(1);
  const base = Float64Array.from({ length: units * points }, () => random() * 100);
  return [0, 1, 2].map((batch) => {
    const values = new Float64Array(units * secondsPerCommit * points);
    values.forEach((_, at) => {
      const value = base[at % base.length] + Math.sin(batch / 150) + random() * 0.2;
      values[at] = at % points < points / 2 ? Math.round(value * 100) / 100 : value;
    });
    return values;
  });
}

async function duckdbTail(folder, units, checkpointThreshold) {
  const options = { threads: '2', memory_limit: '1GB', checkpoint_threshold: checkpointThreshold };
  const instance = await DuckDBInstance.create(join(folder, 'tail.duckdb'), options);
  const [writer, reader] = [await instance.connect(), await instance.connect()];
  const values = columns.map((column) => `${column} DOUBLE NOT NULL`).join(', ');
  await writer.run(`CREATE TABLE tail (holder INTEGER, second BIGINT, ${values})`);
  const types = [INTEGER, BIGINT, ...columns.map(() => DOUBLE)];
  return {
    async write(batch, commit) {
      await writer.run('BEGIN');
      const appender = await writer.createAppender('tail');
      for (let at = 0; at < units * secondsPerCommit; at += 2048) {
        const count = Math.min(2048, units * secondsPerCommit - at);
        const chunk = DuckDBDataChunk.create(types, count);
        const rows = Array.from({ length: count }, (_, row) => at + row);
        chunk.setColumnValues(
          0,
          rows.map((row) => row % units),
        );
        chunk.setColumnValues(
          1,
          rows.map((row) => BigInt(secondOf(commit, row, units))),
        );
        for (let point = 0; point < points; point++) {
          const vector = chunk.getColumnVector(2 + point);
          for (let row = 0; row < count; row++) vector.setItem(row, batch[(at + row) * points + point]);
          vector.flush();
        }
        appender.appendDataChunk(chunk);
      }
      appender.closeSync();
      await writer.run('COMMIT');
    },
    async read(holder) {
      const sql =
        'SELECT second // 6000 AS b, min(p7), avg(p7), max(p7), count(p7) FROM tail WHERE holder = ? GROUP BY b';
      await reader.runAndReadAll(sql, [holder]);
    },
    close() {
      writer.closeSync();
      reader.closeSync();
      instance.closeSync();
    },
  };
}

function libsqlTail(folder, units, { schema, insert, toRow, select }) {
  const database = new Database(join(folder, 'tail.sqlite'));
  database.pragma('journal_mode = WAL');
  database.exec(schema);
  const statement = database.prepare(insert);
  const selection = database.prepare(select).raw();
  const commitAll = database.transaction((batch, commit) => {
    for (let row = 0; row < units * secondsPerCommit; row++) {
      const values = batch.subarray(row * points, (row + 1) * points);
      statement.run(row % units, secondOf(commit, row, units), ...toRow(values));
    }
  });
  return {
    write: async (batch, commit) => commitAll(batch, commit),
    read: async (holder) => void selection.all(holder),
    close: () => database.close(),
  };
}

const libsqlWide = (folder, units) =>
  libsqlTail(folder, units, {
    schema: `CREATE TABLE tail (holder INTEGER, second INTEGER, ${columns.map((column) => `${column} REAL`).join(', ')})`,
    insert: `INSERT INTO tail VALUES (?, ?, ${columns.map(() => '?').join(', ')})`,
    toRow: (values) => values,
    select: 'SELECT second / 6000 AS b, min(p7), avg(p7), max(p7), count(p7) FROM tail WHERE holder = ? GROUP BY b',
  });

const libsqlBlob = (folder, units) =>
  libsqlTail(folder, units, {
    schema: 'CREATE TABLE tail (holder INTEGER, second INTEGER, v BLOB, PRIMARY KEY (holder, second)) WITHOUT ROWID',
    insert: 'INSERT INTO tail VALUES (?, ?, ?)',
    toRow: (values) => [Buffer.from(values.buffer, values.byteOffset, values.byteLength)],
    select: 'SELECT second, v FROM tail WHERE holder = ?',
  });

function plainLog(folder) {
  const file = openSync(join(folder, 'log'), 'a');
  return {
    async write(batch) {
      writeSync(file, Buffer.from(batch.buffer));
      fsyncSync(file);
    },
    read: null,
    close: () => closeSync(file),
  };
}

const secondOf = (commit, row, units) => (commit * secondsPerCommit + Math.floor(row / units)) * 1000;

const candidates = [
  ['plain log, no reader (floor)', plainLog],
  ['DuckDB, log folded each 16 MB', (folder, units) => duckdbTail(folder, units, '16MB')],
  ['DuckDB, log folded each 128 MB', (folder, units) => duckdbTail(folder, units, '128MB')],
  ['libsql, wide rows', libsqlWide],
  ['libsql, a row a BLOB, by key', libsqlBlob],
];

const quantile = (values, part) => [...values].sort((a, b) => a - b)[Math.floor((values.length - 1) * part)] ?? NaN;
const bytesIn = (folder) => readdirSync(folder).reduce((sum, name) => sum + statSync(join(folder, name)).size, 0);

async function measure(name, open, batches, commits, units) {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-'));
  const tail = await open(folder, units);
  const [commitMs, readMs, cpuMs] = [[], [], []];
  for (let commit = 0; commit < commits; commit++) {
    const started = performance.now();
    const cpu = process.cpuUsage();
    const reading = tail.read?.((commit * 37) % units).then(() => readMs.push(performance.now() - started));
    await tail.write(batches[commit % batches.length], commit);
    commitMs.push(performance.now() - started);
    await reading;
    const used = process.cpuUsage(cpu);
    cpuMs.push((used.user + used.system) / 1000);
  }
  const samples = commits * units * secondsPerCommit * points;
  const figures = {
    name,
    medianMs: quantile(commitMs, 0.5),
    p90Ms: quantile(commitMs, 0.9),
    worstMs: quantile(commitMs, 1),
    cpuMs: cpuMs.reduce((sum, ms) => sum + ms, 0) / commits,
    readMs: quantile(readMs, 0.5),
    bytesPerSample: bytesIn(folder) / samples,
  };
  tail.close();
  rmSync(folder, { recursive: true, force: true });
  return figures;
}

/** Measures all candidates and returns their figures; ratios are to the floor's median. */
export async function benchHistoryTail({ commits = 25, units = 5000 } = {}) {
  const batches = makeBatches(units);
  const results = [];
  for (const [name, open] of candidates) results.push(await measure(name, open, batches, commits, units));
  const floor = results[0]?.medianMs ?? NaN;
  return results.map((result) => ({ ...result, ratio: result.medianMs / floor }));
}

export function printHistoryTail(results, units = 5000) {
  console.log(`history tail: ${units} units × ${points} points, ${secondsPerCommit} s a commit`);
  for (const { name, medianMs, p90Ms, worstMs, cpuMs, readMs, bytesPerSample, ratio } of results) {
    const times = `commit ${medianMs.toFixed(0)} ms (p90 ${p90Ms.toFixed(0)}, worst ${worstMs.toFixed(0)}), ${ratio.toFixed(1)} × floor`;
    const reader = Number.isNaN(readMs) ? '' : `read beside ${readMs.toFixed(0)} ms, `;
    const rest = `CPU ${cpuMs.toFixed(0)} ms, ${reader}${bytesPerSample.toFixed(1)} B a sample`;
    console.log(`  ${name}: ${times}; ${rest}`);
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const [commits = 25, units = 5000] = process.argv.slice(2).map(Number);
  printHistoryTail(await benchHistoryTail({ commits, units }), units);
}

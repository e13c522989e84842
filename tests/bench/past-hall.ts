import { join } from 'node:path';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import { siteFromText } from '../../backend/src/connections/site-files/read-site-file';
import type { HistoryRows } from '../../backend/src/evaluation/pipeline/history-rows';
import { createPipeline } from '../../backend/src/evaluation/pipeline/create-pipeline';
import type { CompiledSite } from '../../backend/src/evaluation/site/compiled-site';
import { historyLayout } from '../../backend/src/main/history-layout';
import type { HistoryStore, TogetherQuery } from '../../backend/src/ports/history-store';
import { RunnerPastDesk } from '../../backend/src/runner/past/past-desk';
import { benchSite, hallId, topicOf } from './bench-site';
import { payload } from './telemetry';

const hourMs = 3_600_000;
const minuteMs = 60_000;
const startMs = Date.UTC(2025, 5, 1);
/** The first of these is sealed, the rest in the tail. */
const minutesKept = 66;
const say = (line: string): void => void process.stdout.write(`${line}\n`);

function siteOf(units: number): CompiledSite {
  const read = siteFromText(benchSite(units, units));
  if (!read.ok) throw new Error(`the bench site is not accepted: ${JSON.stringify(read.fault[0])}`);
  return read.value.site;
}

/** Some seconds as the judge hands them to history; they are written again and again, as what is in them does not matter here. */
function rowsOf(site: CompiledSite, seconds: number): HistoryRows {
  const pipeline = createPipeline(site, { clock: 'wall', startMs });
  for (let beat = 0; beat < seconds; beat += 1) {
    const nowMs = startMs + beat * 1000;
    for (let unit = 0; unit < site.units.length; unit += 1) {
      const sent = Buffer.from(payload(unit, beat, nowMs));
      pipeline.accept({ topic: topicOf(unit), payload: sent, retained: false }, nowMs);
    }
    pipeline.advance(nowMs + 950);
  }
  const rows = pipeline.drainHistory(startMs + seconds * 1000, true);
  if (rows === null) throw new Error('the judge gave nothing to history');
  return rows;
}

const patternS = 10;
async function fill(site: CompiledSite, store: HistoryStore): Promise<number> {
  await store.useLayout(historyLayout(site));
  const rows = rowsOf(site, patternS);
  for (let atS = 0; atS < minutesKept * 60; atS += patternS) {
    await store.write({
      ...rows,
      holder: rows.holder.slice(),
      offset: rows.offset.slice(),
      values: rows.values.slice(),
      quality: rows.quality.slice(),
      secondMs: rows.secondMs.map((second) => second + atS * 1000),
    });
  }
  return (rows.values.length * minutesKept * 60) / patternS;
}

interface Timed<Value> {
  readonly value: Value;
  readonly cpuMs: number;
  readonly ms: number;
  /** Longest that nothing else was let run on the thread, ms. */
  readonly heldMs: number;
}

async function timed<Value>(job: () => Promise<Value>): Promise<Timed<Value>> {
  let heldMs = 0;
  let lastMs = performance.now();
  const look = (): void => {
    const nowMs = performance.now();
    heldMs = Math.max(heldMs, nowMs - lastMs);
    lastMs = nowMs;
  };
  const looking = setInterval(look, 1);
  const [cpu, startedMs] = [process.cpuUsage(), performance.now()];
  const value = await job();
  look();
  clearInterval(looking);
  const { user, system } = process.cpuUsage(cpu);
  return { value, cpuMs: (user + system) / 1000, ms: performance.now() - startedMs, heldMs };
}

/** The store, noting what it is asked, so that the same can be asked again bare. */
function noted(store: HistoryStore, asked: TogetherQuery[]): HistoryStore {
  return new Proxy(store, {
    get: (of, key) => {
      if (key === 'readTogether')
        return (query: TogetherQuery) => {
          asked.push(query);
          return of.readTogether(query);
        };
      if (key === 'readSeconds')
        return ({ holder, columns, ...span }: Parameters<HistoryStore['readSeconds']>[0]) => {
          asked.push({ holders: [{ holder, columns }], ...span });
          return of.readSeconds({ holder, columns, ...span });
        };
      const value: unknown = Reflect.get(of, key, of);
      return typeof value === 'function' ? (value.bind(of) as unknown) : value;
    },
  });
}

const runs = 3;
/** The least of some runs counts, as what else the machine does only ever adds. */
async function least<Value>(job: () => Promise<Value>): Promise<Timed<Value>> {
  const all: Timed<Value>[] = [];
  for (let i = 0; i < runs; i += 1) all.push(await timed(job));
  return all.sort((a, b) => a.cpuMs - b.cpuMs)[0] as Timed<Value>;
}

/** `node tests/bench/past-hall.bench.mjs`: figures as they are; ends by itself. */
export async function run(folder: string, units: number): Promise<void> {
  const site = siteOf(units);
  const store = await DuckDbHistoryStore.open({ folder: join(folder, 'history') });
  const journal = new SqliteAlarmJournal(join(folder, 'journal.sqlite'));
  try {
    const filled = await timed(() => fill(site, store));
    await store.maintain(startMs + minutesKept * minuteMs);
    say(`${units} units, ${minutesKept} min of seconds, ${(filled.value / 1e6).toFixed(0)} M values written`);
    const asked: TogetherQuery[] = [];
    const nowMs = (): number => startMs + minutesKept * minuteMs;
    const parts = { site: () => site, store: noted(store, asked), journal, nowMs, clock: 'wall' } as const;
    const desk = new RunnerPastDesk(parts);
    const [hall, unit] = [hallId(0), site.units[0]?.id ?? ''];
    const [sealedMs, tailMs] = [startMs + hourMs - 20_000, startMs + (minutesKept - 1) * minuteMs];
    const wanted = { hall, unit: null, fromMs: startMs, toMs: startMs + hourMs };
    const jobs: readonly (readonly [string, () => Promise<{ readonly ok: boolean }>])[] = [
      ['hall, sealed hour', () => desk.hall(hall, sealedMs)],
      ['hall, newest hour', () => desk.hall(hall, tailMs)],
      ['hour of a hall, sealed', () => desk.trails(hall, sealedMs)],
      ['hour of a hall, newest', () => desk.trails(hall, tailMs)],
      ['unit, sealed hour', () => desk.unit(unit, sealedMs)],
      ['unit, newest hour', () => desk.unit(unit, tailMs)],
      ['marks of an hour', () => desk.marks(wanted)],
    ];
    for (const [what, job] of jobs) {
      asked.length = 0;
      const first = await timed(job);
      if (!first.value.ok) throw new Error(`${what}: ${JSON.stringify(first.value)}`);
      const queries = [...asked];
      const bare = await least(async () => {
        for (const query of queries) await store.readTogether(query);
      });
      const used = await least(job);
      say(
        `  ${what}: ${(used.cpuMs / bare.cpuMs).toFixed(2)} × bare (CPU ${used.cpuMs.toFixed(0)} ms, bare ${bare.cpuMs.toFixed(0)} ms); ${used.ms.toFixed(0)} ms, first time ${first.ms.toFixed(0)} ms; the thread held ${used.heldMs.toFixed(0)} ms at most`,
      );
    }
  } finally {
    journal.close();
    await store.close();
  }
}

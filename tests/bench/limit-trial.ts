import { setTimeout as wait } from 'node:timers/promises';
import { join } from 'node:path';
import type { LimitTrial } from '@ebbline/shared/contract/limit-trial';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import { historyLayout } from '../../backend/src/main/history-layout';
import { RunnerTrialDesk } from '../../backend/src/runner/trial-desk/trial-desk';
import { buildSite } from '../helpers/compiled-site-builder';

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;
const startMs = Date.UTC(2025, 0, 1);

/** Of the points that are judged: a slow swing that falls below the limit for an hour a day, with noise; the others stand. */
const marginAt = (second: number): number =>
  2000 + 2600 * Math.sin((2 * Math.PI * second) / 86_400) + 40 * Math.sin(second * 1.7);

const built = buildSite({ accuracy: { 'ambient.pressure': [30, Number.NaN] } });

/** Plausible values of the measured points, so that everything can be worked out. */
const measured: Readonly<Record<string, number>> = {
  'ambient.pressure': 101_325,
  'hall.temperature': 25,
  'hall.humidity': 0.4,
  'supply.temperature': 35,
  'return.temperature': 45,
  'facility.supply.temperature': 30,
  'supplyTank.pressure': 85_000,
  'separator.pressure': 30_000,
  'loop.flow': 0.006,
  'vacuum.exhaustFlow': 0.0001,
  'vacuum.speed': 0.6,
  'vacuum.running': 1,
  'pump.running': 1,
  'pump.speed': 0.7,
  'separator.level': 0.6,
  'supplyTank.level': 0.6,
  'water.found': 0,
  mode: 2,
};

/** Hours of two holders, hall and unit, one row a second, every column filled. */
async function fill(store: DuckDbHistoryStore, days: number): Promise<void> {
  const layout = historyLayout(built.site);
  await store.useLayout(layout);
  const widths = layout.holders.map(({ columns }) => columns.length);
  const width = (widths[0] ?? 0) + (widths[1] ?? 0);
  const rows = 3600;
  const values = new Float64Array(rows * width);
  const quality = new Uint8Array(rows * width).fill(1);
  const columns = layout.holders.flatMap((holder) => holder.columns.map(({ point }) => point));
  const margins = ['vacuumMargin', 'vacuumMarginWorst'].map((point) => columns.indexOf(point));
  for (let row = 0; row < rows; row += 1)
    columns.forEach((point, i) => (values[row * width + i] = measured[point] ?? 1));
  for (let hour = 0; hour < days * 24; hour += 1) {
    for (let row = 0; row < rows; row += 1)
      for (const i of margins) values[row * width + i] = marginAt(hour * 3600 + row);
    await store.write({
      count: 2 * rows,
      holder: Int32Array.from({ length: 2 * rows }, (_, i) => i % 2),
      secondMs: Float64Array.from({ length: 2 * rows }, (_, i) => startMs + hour * hourMs + Math.floor(i / 2) * 1000),
      offset: Int32Array.from(
        { length: 2 * rows },
        (_, i) => Math.floor(i / 2) * width + (i % 2 === 0 ? 0 : (widths[0] ?? 0)),
      ),
      values: values.slice(),
      quality,
    });
    if (hour % 6 === 5) await store.maintain(startMs + (hour + 2) * hourMs);
  }
  await store.maintain(startMs + days * dayMs + 2 * hourMs);
}

interface Timed<Value> {
  readonly value: Value;
  readonly cpuMs: number;
  readonly ms: number;
}

async function timed<Value>(job: () => Promise<Value>): Promise<Timed<Value>> {
  const [cpu, started] = [process.cpuUsage(), performance.now()];
  const value = await job();
  const { user, system } = process.cpuUsage(cpu);
  return { value, cpuMs: (user + system) / 1000, ms: performance.now() - started };
}

export async function run(folder: string, days: number): Promise<void> {
  const store = await DuckDbHistoryStore.open({
    folder: join(folder, 'history'),
    retention: { rawDays: 1000, rawBytes: 1e12, minuteDays: 1000 },
  });
  try {
    await fill(store, days);
    const desk = new RunnerTrialDesk({
      site: () => built.site,
      store,
      nowMs: () => Number.NaN,
      monotonicMs: () => performance.now(),
      report: (fault) => {
        throw fault;
      },
    });
    const trial = async (entry: string, proposed: object, spanMs: number): Promise<LimitTrial> => {
      const [from, to] = [startMs, startMs + spanMs].map((ms) => new Date(ms).toISOString());
      const started = desk.start({ entry, units: ['m1'], from: from ?? '', to: to ?? '', proposed });
      if (!started.ok) throw new Error(started.fault.message);
      for (;;) {
        const found = desk.find(started.value.id);
        if (!found.ok) throw new Error(found.fault.message);
        if (found.value.state === 'failed') throw new Error(found.value.notes.join(' '));
        if (found.value.state === 'done') return found.value;
        await wait(10);
      }
    };
    const points = ['vacuumMargin', 'mode', 'pump.running', 'vacuum.running'];
    const columns = (historyLayout(built.site).holders[1]?.columns ?? []).filter(({ point }) => points.includes(point));
    const raw = await timed(async () => {
      let sum = 0;
      for (let day = 0; day < days; day += 1) {
        const [fromMs, toMs] = [startMs + day * dayMs, startMs + (day + 1) * dayMs];
        const { values } = await store.readSeconds({ holder: 'm1', columns, fromMs, toMs });
        for (const column of values) for (const value of column) sum += value;
      }
      return sum;
    });
    console.log(`limit trial, one unit × ${days} days at 1 s of embedded history:`);
    console.log(`  bare read of ${columns.length} columns: ${raw.ms.toFixed(0)} ms (CPU ${raw.cpuMs.toFixed(0)} ms)`);
    const tell = ({ cpuMs, ms, value }: Timed<LimitTrial>, spanMs: number): void => {
      const perSecondUs = (1000 * cpuMs) / (spanMs / 1000);
      console.log(
        `  ${value.entry}, ${value.method}: ${ms.toFixed(0)} ms (CPU ${cpuMs.toFixed(0)} ms, ${(cpuMs / raw.cpuMs).toFixed(2)} × bare read), ${perSecondUs.toFixed(2)} µs a recorded second, raised ${value.live?.raised ?? 0} live and ${value.proposed?.raised ?? 0} proposed`,
      );
    };
    const margin2 = await timed(() => trial('MARGIN-2', { limit: 500 }, days * dayMs));
    if (margin2.value.live?.raised !== days)
      throw new Error(`raised ${margin2.value.live?.raised ?? 0} in ${days} days`);
    tell(margin2, days * dayMs);
    tell(await timed(() => trial('MARGIN-1', { limit: 3000 }, days * dayMs)), days * dayMs);
    tell(await timed(() => trial('AIR-1', { limit: 0.001 }, hourMs)), hourMs);
  } finally {
    await store.close();
  }
}

import { join } from 'node:path';
import type { EnergyStep } from '@ebbline/shared/contract/energy';
import { EnergySumsFile } from '../../backend/src/connections/energy-sums/energy-sums-file';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import type { CompiledSite } from '../../backend/src/evaluation/site/compiled-site';
import { historyLayout } from '../../backend/src/main/history-layout';
import type { HistoryQuery, HistoryStore } from '../../backend/src/ports/history-store';
import { addMeasured } from '../../backend/src/runner/energy/add-unit';
import { emptyPeriod } from '../../backend/src/runner/energy/energy-sums';
import { EnergyFromHistory } from '../../backend/src/runner/energy/energy-from-history';
import { readPowers } from '../../backend/src/runner/energy/unit-powers';
import { WatchedHistory } from '../../backend/src/runner/energy/watched-history';
import { buildSite } from '../helpers/compiled-site-builder';

const dayMs = 86_400_000;
const startMs = Date.UTC(2025, 0, 1);
const units = 12;
const yearDays = 365;

/** A site of so many units like the one of the tests, each with a holder of its own. */
function siteOf(count: number): CompiledSite {
  const { site } = buildSite({ also: ['unit.power'], accuracy: { 'unit.power': [50, NaN] } });
  const [unit] = site.units;
  const holder = unit === undefined ? undefined : site.holders[unit.holder];
  if (unit === undefined || holder === undefined) throw new Error('the site of the tests has no unit');
  const ids = Array.from({ length: count }, (_, index) => `unit-${index}`);
  return {
    ...site,
    timeZone: 'Etc/UTC',
    holders: ids.map((id) => ({ ...holder, id })),
    units: ids.map((id, index) => ({ ...unit, id, holder: index })),
  };
}

async function timed<Value>(job: () => Promise<Value>): Promise<{ value: Value; cpuMs: number; ms: number }> {
  const [cpu, started] = [process.cpuUsage(), performance.now()];
  const value = await job();
  const { user, system } = process.cpuUsage(cpu);
  return { value, cpuMs: (user + system) / 1000, ms: performance.now() - started };
}

function program(site: CompiledSite, store: HistoryStore, file: string, days: number) {
  const kept = new EnergySumsFile(file, 'bench');
  const nowMs = (): number => startMs + (days + 1) * dayMs;
  const watched = new WatchedHistory(store, kept, nowMs);
  // No time passes for it: what is measured is the whole answer, however long it takes.
  const totals = new EnergyFromHistory({ site: () => site, store: watched, kept, nowMs, monotonicMs: () => 0 });
  const ask = async (by: EnergyStep): Promise<number> => {
    const report = await totals.report({ unit: null, hall: null, fromMs: startMs, toMs: startMs + days * dayMs, by });
    if (!report.ok) throw new Error(report.fault.message);
    return report.value.total.heatRemoved.energy ?? Number.NaN;
  };
  return { watched, kept, ask, nowMs };
}

/** One row a minute of every unit; with seconds the figures would be the same, as minutes are what is read. */
async function fill(site: CompiledSite, store: HistoryStore, days: number): Promise<void> {
  const layout = historyLayout(site);
  await store.useLayout(layout);
  const columns = layout.holders[0]?.columns ?? [];
  const at = ['heatRemoved', 'heatRemovedUncertainty', 'unit.power'].map((id) =>
    columns.findIndex(({ point }) => point === id),
  );
  for (let hour = 0; hour < days * 24; hour += 1) {
    const count = 60 * units;
    const values = new Float64Array(count * columns.length).fill(NaN);
    const quality = new Uint8Array(values.length);
    for (let row = 0; row < count; row += 1)
      at.forEach((column, which) => {
        values[row * columns.length + column] = [2e5 + row, 4e3, 3e3][which] ?? NaN;
        quality[row * columns.length + column] = 1;
      });
    await store.write({
      count,
      holder: Int32Array.from({ length: count }, (_, row) => row % units),
      secondMs: Float64Array.from(
        { length: count },
        (_, row) => startMs + hour * 3_600_000 + Math.floor(row / units) * 60_000,
      ),
      offset: Int32Array.from({ length: count }, (_, row) => row * columns.length),
      values,
      quality,
    });
  }
}

async function benchHistory(folder: string, days: number): Promise<void> {
  const site = siteOf(units);
  const store = await DuckDbHistoryStore.open({ folder: join(folder, 'history') });
  try {
    await fill(site, store, days);
    const { watched, kept, ask, nowMs } = program(site, store, join(folder, 'sums.sqlite'), days);
    await watched.maintain(nowMs());
    const pieceMs = 600_000;
    const [fromMs, toMs] = [startMs, startMs + days * dayMs];
    const raw = await timed(async () => {
      const period = emptyPeriod(fromMs, toMs);
      for (const holder of site.holders)
        addMeasured([period], await readPowers(store, site, holder, { fromMs, toMs, pieceMs }), pieceMs);
      return period.of.heatRemoved.energy;
    });
    const cold = await timed(() => ask('hour'));
    const hours = await timed(() => ask('hour'));
    const wholeDays = await timed(() => ask('day'));
    kept.close();
    for (const { value } of [cold, hours, wholeDays])
      if (Math.abs(value / raw.value - 1) > 1e-9) throw new Error('kept sums are not those of the rows');
    const line = (what: string, { cpuMs, ms }: { cpuMs: number; ms: number }): string =>
      `  ${what}: ${(cpuMs / raw.cpuMs).toFixed(4)} × raw (CPU ${cpuMs.toFixed(0)} ms, ${ms.toFixed(0)} ms)`;
    console.log(`energy, ${units} units × ${days} days of embedded history, a row a minute:`);
    console.log(line('raw, read in pieces of 10 min', raw));
    console.log(line('cold, by hour, added up and kept', cold));
    console.log(line('warm, by hour', hours));
    console.log(line('warm, by day', wholeDays));
  } finally {
    await store.close();
  }
}

/** A history in which every power is 1 kW: what a year costs beside the reading of history. */
const evenHistory: Pick<HistoryStore, 'read' | 'maintain'> = {
  maintain: () => Promise.resolve(),
  read({ fromMs, toMs, buckets }: HistoryQuery) {
    const bucketMs = (toMs - fromMs) / buckets;
    const full = new Float64Array(buckets).fill(1000);
    const count = new Float64Array(buckets).fill(bucketMs / 1000);
    return Promise.resolve({ bucketMs, resolution: 'minute', startMs: full, min: full, mean: full, max: full, count });
  },
};

async function benchYear(folder: string, count: number, steps: readonly EnergyStep[]): Promise<void> {
  const site = siteOf(count);
  const file = join(folder, `year-${count}.sqlite`);
  const { watched, kept, ask, nowMs } = program(site, evenHistory as HistoryStore, file, yearDays);
  await watched.maintain(nowMs());
  const first = await timed(() => ask(steps[0] ?? 'month'));
  console.log(`energy, ${count} units × a year, history that costs nothing:`);
  console.log(`  cold, added up and kept: CPU ${first.cpuMs.toFixed(0)} ms, ${first.ms.toFixed(0)} ms`);
  for (const by of steps) {
    const { cpuMs, ms } = await timed(() => ask(by));
    console.log(
      `  warm, by ${by}: CPU ${cpuMs.toFixed(0)} ms, ${ms.toFixed(0)} ms, ${(cpuMs / first.cpuMs).toFixed(3)} × cold`,
    );
  }
  kept.close();
}

export async function run(folder: string, days: number): Promise<void> {
  await benchYear(folder, units, ['hour', 'day', 'month']);
  await benchHistory(folder, days);
  await benchYear(folder, 200, ['month']);
}

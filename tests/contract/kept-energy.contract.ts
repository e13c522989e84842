import type { EnergyPeriod, EnergyReport, EnergyStep } from '@ebbline/shared/contract/energy';
import { describe, expect, it } from 'vitest';
import { historyLayout } from '../../backend/src/main/history-layout';
import type { HistoryQuery, HistoryStore } from '../../backend/src/ports/history-store';
import type { KeptEnergy } from '../../backend/src/ports/kept-energy';
import { EnergyFromHistory } from '../../backend/src/runner/energy/energy-from-history';
import { WatchedHistory } from '../../backend/src/runner/energy/watched-history';
import { buildSite } from '../helpers/compiled-site-builder';
import { keptSums, keptSumsPath } from '../helpers/kept-sums';
import { hour, minute, rowsOf, second } from './history-samples';
import type { StoreUnderTest } from './store-under-test';

const built = buildSite({ also: ['unit.power'], accuracy: { 'unit.power': [50, NaN] } });
const site = { ...built.site, timeZone: 'Europe/Oslo' };
const unit = site.units[0]?.id ?? '';
const holder = site.units[0]?.holder ?? -1;
const layout = historyLayout(site);
const columns = layout.holders[holder]?.columns ?? [];

// Europe/Oslo, 2025-10-26: clocks go back at 01:00 UTC, so the local day has 25 hours (IANA time zone data base).
const firstMs = Date.UTC(2025, 9, 24, 22);
const dayEdges = [firstMs, firstMs + 24 * hour, firstMs + 49 * hour, firstMs + 73 * hour];
const endMs = dayEdges[3] ?? NaN;
const nowMs = endMs + 5 * hour;
const hole = [firstMs + 30 * hour + 50 * minute, firstMs + 30 * hour + 67 * minute] as const;

interface Raw {
  readonly atMs: number;
  readonly heat: number;
}

/** Hours that have rows, counted from the first: some at the borders of days, and the last of the long one. */
const hoursWithRows: ReadonlySet<number> = new Set([0, 23, 24, 30, 31, 48, 49, 72]);

/** Seconds at a prime distance of each other, so that no two hours are alike; 17 minutes are missing. */
const raws: readonly Raw[] = Array.from({ length: 2552 }, (_, i) => ({
  atMs: firstMs + i * 103 * second,
  heat: 100_000 + 37 * i,
})).filter(
  ({ atMs }) =>
    hoursWithRows.has(Math.floor((atMs - firstMs) / hour)) && atMs < endMs && !(atMs >= hole[0] && atMs < hole[1]),
);

/** A store that counts what is read from it. */
function counting(store: HistoryStore): { readonly store: HistoryStore; readonly queries: HistoryQuery[] } {
  const queries: HistoryQuery[] = [];
  const seen: HistoryStore = {
    useLayout: (told) => store.useLayout(told),
    write: (rows) => store.write(rows),
    read(query) {
      queries.push(query);
      return store.read(query);
    },
    readSeconds: (query) => store.readSeconds(query),
    readTogether: (query) => store.readTogether(query),
    readMinute: (query) => store.readMinute(query),
    maintain: (ms) => store.maintain(ms),
    health: () => store.health(),
    close: () => store.close(),
  };
  return { store: seen, queries };
}

function program(store: HistoryStore, kept: KeptEnergy) {
  const counted = counting(store);
  const watched = new WatchedHistory(counted.store, kept, () => nowMs);
  const parts = { site: () => site, store: watched, kept, nowMs: () => nowMs, monotonicMs: () => 0 };
  const totals = new EnergyFromHistory(parts);
  const writeOnly = async (rows: readonly Raw[]): Promise<void> => {
    const values = ({ heat }: Raw) => columns.map(({ point }) => (point === 'heatRemoved' ? heat : null));
    await watched.write(rowsOf(rows.map((raw) => ({ holder, atMs: raw.atMs, values: values(raw) }))));
  };
  return {
    watched,
    queries: counted.queries,
    writeOnly,
    async ask(by: EnergyStep, fromMs = firstMs, toMs = endMs): Promise<EnergyReport> {
      const report = await totals.report({ unit, hall: null, fromMs, toMs, by });
      if (!report.ok) throw new Error(report.fault.message);
      return report.value;
    },
    async write(rows: readonly Raw[]): Promise<void> {
      await writeOnly(rows);
      await watched.maintain(nowMs);
    },
  };
}

/** The sum of the raw values of each period, one second each, to 10⁻⁹ of it. */
function expectRaw(periods: readonly EnergyPeriod[], rows: readonly Raw[]): void {
  for (const { start, end, heatRemoved } of periods) {
    const inside = rows.filter(({ atMs }) => atMs >= Date.parse(start) && atMs < Date.parse(end));
    const sum = inside.reduce((total, { heat }) => total + heat, 0);
    expect(heatRemoved.measuredSeconds).toBe(inside.length);
    expect(Math.abs((heatRemoved.energy ?? 0) - sum)).toBeLessThanOrEqual(1e-9 * sum);
  }
}

/** Sums of hours that are kept are those of the rows, in any history store alike. */
export function keptEnergyContract(current: () => StoreUnderTest): void {
  const begin = async (kept: KeptEnergy) => {
    const one = program(current().store, kept);
    await one.watched.useLayout(layout);
    return one;
  };

  describe('kept sums of energy', () => {
    it('are those of the raw rows by hour, day and month, in a day of 25 hours and beside a hole too', async () => {
      const { ask, write, queries } = await begin(keptSums());
      await write(raws);
      const cold = { hour: await ask('hour'), day: await ask('day'), month: await ask('month') };
      expect(cold.day.periods.map(({ end }) => Date.parse(end))).toEqual(dayEdges.slice(1));
      expect(cold.hour.periods).toHaveLength(73);
      for (const { periods } of Object.values(cold)) expectRaw(periods, raws);
      expect(cold.day.periods[1]?.heatRemoved.wantedSeconds).toBe(25 * 3600);
      queries.length = 0;
      expect(await ask('day')).toEqual(cold.day);
      expect(await ask('hour')).toEqual(cold.hour);
      expect(queries).toEqual([]);
    });

    it('outlive a restart, and are read from the file alone', async () => {
      const path = keptSumsPath();
      const before = await begin(keptSums(path));
      await before.write(raws);
      const told = await before.ask('day');
      await current().reopen();
      const after = await begin(keptSums(path));
      expect(await after.ask('day')).toEqual(told);
      expect(after.queries).toEqual([]);
    });

    it('are forgotten of the day that rows come for later, and of no other', async () => {
      const { ask, write, queries } = await begin(keptSums());
      await write(raws);
      await ask('day');
      queries.length = 0;
      await ask('day');
      expect(queries).toEqual([]);
      const late = Array.from({ length: 60 }, (_, i) => ({ atMs: hole[0] + i * second, heat: 90_000 + i }));
      await write(late);
      queries.length = 0;
      expectRaw((await ask('day')).periods, [...raws, ...late]);
      expect(new Set(queries.map(({ fromMs, toMs }) => `${fromMs} ${toMs}`))).toEqual(
        new Set([`${dayEdges[1]} ${dayEdges[2]}`]),
      );
    });

    // Late rows are in the minutes with the next maintenance: what is read before is not to stay.
    it('keep nothing that was read between late rows and the next maintenance, nor between a start and the first', async () => {
      const path = keptSumsPath();
      const before = await begin(keptSums(path));
      await before.write(raws);
      await before.ask('day');
      const late = { atMs: hole[0] + 7 * second, heat: 90_000 };
      await before.writeOnly([late]);
      await before.ask('day');
      await current().reopen();
      const after = await begin(keptSums(path));
      await after.ask('day');
      await after.watched.maintain(nowMs);
      expectRaw((await after.ask('day')).periods, [...raws, late]);
    });

    it('follow a row that is written again with another value', async () => {
      const { ask, write } = await begin(keptSums());
      await write(raws);
      await ask('hour');
      const [first, ...others] = raws;
      const corrected = { atMs: first?.atMs ?? NaN, heat: 5 };
      await write([corrected]);
      expectRaw((await ask('hour')).periods, [corrected, ...others]);
    });
  });
}

import type { EnergyReport, EnergyStep } from '@ebbline/shared/contract/energy';
import { describe, expect, it } from 'vitest';
import { historyLayout } from '../../backend/src/main/history-layout';
import { EnergyFromHistory } from '../../backend/src/runner/energy/energy-from-history';
import { WatchedHistory } from '../../backend/src/runner/energy/watched-history';
import { buildSite } from '../helpers/compiled-site-builder';
import { keptSums } from '../helpers/kept-sums';
import { hour, minute, rowsOf, second, startMs } from './history-samples';
import type { StoreUnderTest } from './store-under-test';

const built = buildSite({ also: ['unit.power'], accuracy: { 'unit.power': [50, NaN] } });
const site = { ...built.site, timeZone: 'Europe/Oslo' };
const unit = site.units[0]?.id ?? '';
const holder = site.units[0]?.holder ?? -1;
const layout = historyLayout(site);
const columns = layout.holders[holder]?.columns ?? [];

type Powers = Readonly<Record<string, number>>;

/** One row of the unit: these points, nothing else. */
const row = (atMs: number, powers: Powers) => ({
  holder,
  atMs,
  values: columns.map(({ point }) => powers[point] ?? null),
});

/** Energy totals are added up from any history store alike. All expected numbers are worked out by hand. */
export function energyContract(current: () => StoreUnderTest): void {
  const write = async (fromMs: number, count: number, at: (second: number) => Powers | null) => {
    const rows = Array.from({ length: count }, (_, i) => {
      const powers = at(i);
      return powers === null ? [] : [row(fromMs + i * second, powers)];
    });
    await current().store.write(rowsOf(rows.flat()));
  };
  const ask = async (fromMs: number, toMs: number, by: EnergyStep, nowMs = toMs): Promise<EnergyReport> => {
    const kept = keptSums();
    const store = new WatchedHistory(current().store, kept, () => nowMs);
    const totals = new EnergyFromHistory({
      site: () => site,
      store,
      kept,
      nowMs: () => nowMs,
      monotonicMs: () => 0,
    });
    const report = await totals.report({ unit, hall: null, fromMs, toMs, by });
    if (!report.ok) throw new Error(report.fault.message);
    return report.value;
  };

  describe('energy totals', () => {
    /** 100 kW and 10 W more with every second. */
    const ramp = (i: number): number => 100_000 + 10 * i;
    /** Σ ramp(i) for i = from … to − 1, as an arithmetic series: number of terms × (first + last) ÷ 2. */
    const series = (from: number, to: number): number => ((to - from) * (ramp(from) + ramp(to - 1))) / 2;

    it('show a hole of 17 minutes as 17 minutes not measured, and put no energy into it', async () => {
      await current().store.useLayout(layout);
      const [holeFrom, holeTo] = [3600 + 200, 3600 + 200 + 17 * 60];
      await write(startMs, 3 * 3600, (i) => (i >= holeFrom && i < holeTo ? null : { heatRemoved: ramp(i) }));
      const check = async () => {
        const { periods, total } = await ask(startMs, startMs + 3 * hour, 'hour');
        expect(periods.map(({ heatRemoved }) => heatRemoved.measuredSeconds)).toEqual([3600, 3600 - 17 * 60, 3600]);
        expect(periods.map(({ heatRemoved }) => heatRemoved.wantedSeconds)).toEqual([3600, 3600, 3600]);
        expect(total.heatRemoved.wantedSeconds - total.heatRemoved.measuredSeconds).toBe(1020);
        expect(periods[1]?.heatRemoved.share).toBeCloseTo(2580 / 3600, 12);
        const middle = series(3600, holeFrom) + series(holeTo, 7200);
        const expected = [series(0, 3600), middle, series(7200, 10_800)];
        periods.forEach(({ heatRemoved }, i) => expect(heatRemoved.energy).toBeCloseTo(expected[i] ?? NaN, 2));
        expect(total.heatRemoved.energy).toBeCloseTo(series(0, 10_800) - series(holeFrom, holeTo), 2);
        const day = await ask(startMs, startMs + 3 * hour, 'day', startMs + 3 * hour);
        // The local day began at 22:00 UTC: two hours of it passed before the first value.
        expect(day.total.heatRemoved).toMatchObject({ measuredSeconds: 9780, wantedSeconds: 5 * 3600 });
        expect(day.total.heatRemoved.energy).toBeCloseTo(total.heatRemoved.energy ?? NaN, 2);
      };
      await check();
      await current().store.maintain(startMs + 24 * hour);
      await check();
    });

    it('say nothing where nothing was measured, and nothing of a point that nobody sent', async () => {
      await current().store.useLayout(layout);
      await write(startMs, 60, () => ({ heatRemoved: 1000 }));
      const { periods } = await ask(startMs, startMs + 2 * hour, 'hour');
      expect(periods[1]?.heatRemoved).toEqual({
        energy: null,
        expandedUncertainty: null,
        measuredSeconds: 0,
        wantedSeconds: 3600,
        share: 0,
      });
      expect(periods[0]?.chipEnergy.energy).toBeNull();
      expect(periods[0]?.heatPerUnitEnergy).toBeNull();
    });

    it('want no more of the running hour than has passed', async () => {
      await current().store.useLayout(layout);
      await write(startMs, 600, () => ({ heatRemoved: 1000 }));
      const { periods, to } = await ask(startMs, startMs + 10 * minute, 'hour');
      expect(to).toBe(new Date(startMs + hour).toISOString());
      expect(periods[0]?.heatRemoved).toMatchObject({
        energy: 600_000,
        measuredSeconds: 600,
        wantedSeconds: 600,
        share: 1,
      });
    });

    // JCGM 100:2008, 5.2.2, note 1: with all correlations +1 the uncertainties add up: 2 % of each second is 2 % of the sum.
    it('are as unsure as the power was, however many seconds are added up', async () => {
      await current().store.useLayout(layout);
      await write(startMs, 3600, () => ({ heatRemoved: 100_000, heatRemovedUncertainty: 2000, 'unit.power': 5000 }));
      const { periods } = await ask(startMs, startMs + hour, 'hour');
      expect(periods[0]?.heatRemoved.expandedUncertainty).toBeCloseTo(0.02 * 3.6e8, 3);
      // ± 50 W with nothing more known: U = 2 × 50 ÷ √3 in every second (JCGM 100:2008, 4.3.7).
      expect(periods[0]?.unitEnergy.expandedUncertainty).toBeCloseTo((2 * 50 * 3600) / Math.sqrt(3), 3);
    });

    it('tell no uncertainty where it was not known for more than a moment', async () => {
      await current().store.useLayout(layout);
      await write(startMs, 3600, (i) => ({ heatRemoved: 1000, ...(i < 1800 ? { heatRemovedUncertainty: 20 } : {}) }));
      expect((await ask(startMs, startMs + hour, 'hour')).total.heatRemoved.expandedUncertainty).toBeNull();
    });

    it('hold heat against electrical energy over what has both', async () => {
      await current().store.useLayout(layout);
      // Heat for the whole hour, power for its second half only: 100 kW ÷ 2 kW, not half of it.
      await write(startMs, 3600, (i) => ({ heatRemoved: 100_000, ...(i < 1800 ? {} : { 'unit.power': 2000 }) }));
      expect((await ask(startMs, startMs + hour, 'hour')).total.heatPerUnitEnergy).toBeCloseTo(50, 9);
    });

    // Europe/Oslo, 2025-10-26: clocks go back at 01:00 UTC, the day runs from 22:00 UTC to 23:00 UTC of the next.
    it('put every second into its local day, also into the one of 25 hours', async () => {
      await current().store.useLayout(layout);
      const midnight = Date.UTC(2025, 9, 25, 22);
      await write(midnight - 2 * second, 4, (i) => ({ heatRemoved: i + 1 }));
      await write(midnight + 25 * hour - 2 * second, 4, (i) => ({ heatRemoved: 10 * (i + 1) }));
      const { periods } = await ask(midnight - second, midnight + 25 * hour + second, 'day');
      expect(periods.map(({ heatRemoved }) => heatRemoved.energy)).toEqual([1 + 2, 3 + 4 + 10 + 20, 30 + 40]);
      expect(periods[1]?.heatRemoved.wantedSeconds).toBe(25 * 3600);
    });
  });
}

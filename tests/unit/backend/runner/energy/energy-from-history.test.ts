import { describe, expect, it } from 'vitest';
import type { HistoryStore } from '../../../../../backend/src/ports/history-store';
import { EnergyFromHistory } from '../../../../../backend/src/runner/energy/energy-from-history';
import { WatchedHistory } from '../../../../../backend/src/runner/energy/watched-history';
import { keptSums } from '../../../../helpers/kept-sums';
import { smallSite } from '../../../../helpers/small-site';

const hour = 3_600_000;
const site = smallSite();
const reads: string[] = [];
let tookMs = 0;
const nowOf = { ms: 100 * hour };

/** A store in which every power is 1 kW in every second. */
const store: Pick<HistoryStore, 'read' | 'maintain'> = {
  maintain: () => Promise.resolve(),
  read({ holder, point, fromMs, toMs, buckets }) {
    tookMs += 1000;
    reads.push(`${holder} ${point} ${fromMs}`);
    const bucketMs = (toMs - fromMs) / buckets;
    const full = new Float64Array(buckets).fill(1000);
    const count = new Float64Array(buckets).fill(bucketMs / 1000);
    const startMs = Float64Array.from({ length: buckets }, (_, i) => fromMs + i * bucketMs);
    return Promise.resolve({ bucketMs, resolution: 'minute', startMs, min: full, mean: full, max: full, count });
  },
};
const kept = keptSums();
const nowMs = (): number => nowOf.ms;
const watched = new WatchedHistory(store as HistoryStore, kept, nowMs);
const totals = new EnergyFromHistory({ site: () => site, store: watched, kept, nowMs, monotonicMs: () => tookMs });
const request = { unit: null, hall: null, fromMs: 0, toMs: hour, by: 'hour' } as const;

describe('EnergyFromHistory', () => {
  it('adds up the units of the site, or of a hall', async () => {
    const report = await totals.report(request);
    if (!report.ok) throw new Error(report.fault.message);
    expect(report.value.units).toEqual(site.units.map(({ id }) => id));
    const { energy, wantedSeconds, measuredSeconds, share } = report.value.total.heatRemoved;
    const having = site.units.length;
    expect([energy, wantedSeconds, measuredSeconds, share]).toEqual([having * 3.6e6, having * 3600, having * 3600, 1]);
    const hall = site.halls[0]?.id ?? '';
    const ofHall = await totals.report({ ...request, hall });
    expect(ofHall.ok && ofHall.value.units).toEqual(site.units.filter((unit) => unit.hall === 0).map(({ id }) => id));
  });

  it('refuses a unit or a hall that the site has not', async () => {
    expect(await totals.report({ ...request, unit: 'nobody' })).toMatchObject({
      ok: false,
      fault: { code: 'UNIT_UNKNOWN' },
    });
    expect(await totals.report({ ...request, hall: 'nowhere' })).toMatchObject({
      ok: false,
      fault: { code: 'HALL_UNKNOWN' },
    });
  });

  it('refuses more than it can read in a moment, and reads nothing of it', async () => {
    reads.length = 0;
    const unit = site.units[0]?.id ?? '';
    for (const refused of [
      { ...request, unit, toMs: 8_801 * hour },
      { ...request, unit, toMs: 4_001 * 24 * hour, by: 'day' as const },
      { ...request, toMs: 400_001 * 24 * hour, by: 'month' as const },
    ])
      expect(await totals.report(refused)).toMatchObject({ ok: false, fault: { code: 'ENERGY_RANGE' } });
    expect(reads).toEqual([]);
  });

  // Each reading of the store takes a second of the clock that is handed in.
  it('says what is left after 12 s, keeps what it has, and goes on from there when it is asked again', async () => {
    reads.length = 0;
    const ask = { ...request, toMs: 90 * 24 * hour, by: 'day' as const };
    nowOf.ms = 100 * 24 * hour;
    await watched.maintain(nowOf.ms);
    let asked = 0;
    let report = await totals.report(ask);
    while (!report.ok) {
      expect(report.fault).toMatchObject({ code: 'ENERGY_NOT_YET', message: expect.stringContaining('Ask again') });
      asked += 1;
      expect(asked).toBeLessThan(50);
      report = await totals.report(ask);
    }
    expect(asked).toBeGreaterThan(0);
    expect(report.value.total.heatRemoved.energy).toBe(site.units.length * 90 * 24 * 3.6e6);
    expect(new Set(reads).size).toBe(reads.length);
  });
});

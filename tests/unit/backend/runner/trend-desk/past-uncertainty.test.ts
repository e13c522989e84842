import { beforeEach, describe, expect, it } from 'vitest';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { RunnerTrendDesk } from '../../../../../backend/src/runner/trend-desk/trend-desk';
import { buildSite, runUnitM } from '../../../../helpers/compiled-site-builder';
import { historyInMemory, type HistoryInMemory } from '../../../../helpers/history-in-memory';

const fromMs = Date.UTC(2031, 4, 6);
const accuracy = { 'supply.temperature': [0.2, 0], 'loop.flow': [0, 0.01] } as const;
const built = buildSite({ accuracy });
runUnitM(built);
const { site } = built;
const iso = (second: number): string => new Date(fromMs + second * 1000).toISOString();

/** What the running unit measures, each second of a stretch. */
function recorded(fromSecond: number, toSecond: number): HistoryInMemory {
  const history = historyInMemory(site);
  for (let second = fromSecond; second < toSecond; second += 1)
    for (const { firstSlot, id, slotCount } of site.holders)
      for (let slot = firstSlot; slot < firstSlot + slotCount; slot += 1)
        if (site.slots.measured[slot] === 1 && !Number.isNaN(built.state.value[slot]))
          history.put(id, site.slots.pointId[slot] ?? '', fromMs + second * 1000, built.state.value[slot] ?? NaN);
  return history;
}
const deskOver = (store: HistoryInMemory, nowSecond = 7200): RunnerTrendDesk =>
  new RunnerTrendDesk({
    journal: { page: () => ({ rows: [], next: null }), standing: () => [] },
    store,
    site: () => site,
    nowMs: () => fromMs + nowSecond * 1000 + laterMs,
    monotonicMs: () => (elapsedMs += tookMs),
    pause: () => Promise.resolve(),
  });
async function ask(store: HistoryInMemory, points: readonly string[], nowSecond?: number) {
  const query = { unit: 'm1', points, fromMs, toMs: fromMs + 3_600_000, moments: 12 };
  const found = await deskOver(store, nowSecond).uncertainty(query);
  if (!found.ok) throw new Error(found.fault.message);
  return found.value;
}

/** Time goes on by so much with each look at a clock. */
let [elapsedMs, tookMs, laterMs] = [0, 0, 0];
beforeEach(() => {
  [elapsedMs, tookMs, laterMs] = [0, 0, 0];
});

describe('the uncertainty of past values', () => {
  it('is told as far as it was worked out in the time for one answer, and the rest when asked again', async () => {
    const desk = deskOver(recorded(0, 3600));
    tookMs = 400;
    const query = { unit: 'm1', points: ['massFlow'], fromMs, toMs: fromMs + 3_600_000, moments: 12 };
    const pending: number[] = [];
    for (let turn = 0; turn < 4; turn += 1) {
      const found = await desk.uncertainty(query);
      if (!found.ok) throw new Error(found.fault.message);
      pending.push(found.value.pending);
      const known = found.value.points[0]?.expandedUncertainty.filter((value) => value !== null);
      expect(known).toHaveLength(12 - found.value.pending);
    }
    expect(pending[0]).toBeGreaterThan(0);
    expect(pending.at(-1)).toBe(0);
    expect(pending).toEqual([...pending].sort((one, other) => other - one));
  });

  it('of what was measured is that of the half-width the site states: 2 · 0.2 K / √3 (GUM 4.3.7)', async () => {
    const { moments, points } = await ask(recorded(0, 3600), ['supply.temperature']);
    expect(moments[6]).toBe(iso(1800));
    expect(points[0]?.expandedUncertainty[6]).toBeCloseTo((2 * 0.2) / Math.sqrt(3), 10);
  });

  it('of what was derived is what the same values give when they are live', async () => {
    deriveUnit(site, built.state, 0, 1000, false);
    const live = built.expandedUncertainty('massFlow');
    expect(live).toBeGreaterThan(0);
    const { points } = await ask(recorded(0, 3600), ['massFlow']);
    expect(points[0]?.expandedUncertainty[6]).toBeCloseTo(live, 10);
  });

  it('is not known where nothing was measured, and that is looked at again after a while: rows may come late', async () => {
    const store = recorded(0, 1190);
    const desk = deskOver(store);
    const query = { unit: 'm1', points: ['massFlow'], fromMs, toMs: fromMs + 3_600_000, moments: 12 };
    const known = async () => {
      const found = await desk.uncertainty(query);
      return found.ok ? found.value.points[0]?.expandedUncertainty.map((value) => value !== null) : [];
    };
    // Every five minutes; at 1,200 s nothing had been measured for 10 s.
    expect(await known()).toEqual([true, true, true, true, ...Array<boolean>(8).fill(false)]);
    store.put('m1', 'loop.flow', fromMs + 2_400_000, 0.005);
    const late = recorded(2390, 2401);
    store.readSeconds = late.readSeconds.bind(late);
    expect((await known())?.[8]).toBe(false);
    laterMs = 301_000;
    expect((await known())?.[8]).toBe(true);
  });

  it('is not known of an input that was bad', async () => {
    const store = recorded(0, 3600);
    for (let second = 1600; second < 2000; second += 1) store.put('m1', 'loop.flow', fromMs + second * 1000, null);
    const bad = { ...store, readSeconds: store.readSeconds.bind(store) };
    const seconds = bad.readSeconds;
    bad.readSeconds = async (query) => {
      const read = await seconds(query);
      const column = query.columns.findIndex(({ point }) => point === 'loop.flow');
      if (column >= 0) {
        read.values[column]?.fill(Number.NaN);
        read.quality[column]?.fill(3);
      }
      return read;
    };
    const { points } = await ask(bad, ['massFlow', 'supply.temperature']);
    expect(points[0]?.expandedUncertainty.every((value) => value === null)).toBe(true);
    expect(points[1]?.expandedUncertainty[6]).not.toBeNull();
  });

  it('is told as lost where only minutes are left of what was measured', async () => {
    const store = recorded(0, 3600);
    store.minutesBeforeMs = fromMs + 1_500_000;
    const { minutesBefore, points } = await ask(store, ['massFlow']);
    expect(minutesBefore).toBe(iso(1500));
    expect(points[0]?.expandedUncertainty.map((value) => value !== null)).toEqual([
      ...Array<boolean>(5).fill(false),
      ...Array<boolean>(7).fill(true),
    ]);
  });

  it('leaves out what is still to come, and the seconds that are on their way into the store', async () => {
    const { moments } = await ask(recorded(0, 3600), ['massFlow'], 605);
    expect(moments).toEqual([iso(0), iso(300)]);
  });

  it('is refused for what the site has not, and where too many wait for it', async () => {
    const desk = deskOver(recorded(0, 10));
    const query = { unit: 'm1', points: ['massFlow'], fromMs, toMs: fromMs + 3_600_000, moments: 12 };
    expect(await desk.uncertainty({ ...query, unit: 'm9' })).toMatchObject({ fault: { code: 'UNIT_UNKNOWN' } });
    expect(await desk.uncertainty({ ...query, points: ['none'] })).toMatchObject({ fault: { code: 'POINT_UNKNOWN' } });
    const answers = await Promise.all(Array.from({ length: 8 }, () => desk.uncertainty(query)));
    expect(answers.map((one) => (one.ok ? 'ok' : one.fault.code))).toEqual([
      ...Array<string>(6).fill('ok'),
      ...Array<string>(2).fill('UNCERTAINTY_BUSY'),
    ]);
    expect((await desk.uncertainty(query)).ok).toBe(true);
  });
});

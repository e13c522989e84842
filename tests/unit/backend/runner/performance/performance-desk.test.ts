import { alarmPerformanceSchema, type AlarmPerformance } from '@ebbline/shared/contract/alarm-performance';
import { describe, expect, it } from 'vitest';
import { figures } from '../../../../../backend/src/evaluation/alarm-performance/figures/figures';
import { usualTargets } from '../../../../../backend/src/evaluation/alarm-performance/targets';
import { JournalPerformanceDesk } from '../../../../../backend/src/runner/performance/performance-desk';
import { smallSite } from '../../../../helpers/small-site';
import { JournalInMemory } from './journal-in-memory';

const startMs = Date.UTC(2026, 4, 1);
const dayMs = 86_400_000;
const nothing = { chattering: new Map<string, null>(), fleeting: new Map<string, null>() };
const site = smallSite();
const [hall] = site.halls;

function deskOf(journal: JournalInMemory, pause = () => Promise.resolve()): JournalPerformanceDesk {
  return new JournalPerformanceDesk({
    journal,
    beganMs: () => journal.beganMs,
    site: () => site,
    nowMs: () => startMs + 40 * dayMs,
    wallMs: () => 0,
    targets: usualTargets,
    propose: () => Promise.resolve(nothing),
    pause,
  });
}

async function report(
  journal: JournalInMemory,
  query: Partial<Parameters<JournalPerformanceDesk['report']>[0]> = {},
): Promise<AlarmPerformance> {
  const done = await deskOf(journal).report({ fromMs: null, toMs: null, hall: null, ...query });
  if (!done.ok) throw new Error(done.fault.message);
  return alarmPerformanceSchema.parse(done.value);
}

describe('JournalPerformanceDesk', () => {
  it('takes the last 30 days where nothing is said, and says that they are enough', async () => {
    const journal = new JournalInMemory();
    journal.raise('u1:AIR-1', startMs);
    journal.raise('u2:AIR-1', startMs + 20 * dayMs);
    const found = await report(journal);
    expect(found).toMatchObject({ from: '2026-05-11T00:00:00.000Z', days: 30, enough: true, annunciations: 1 });
    // It came before the period and stands through it.
    expect(found.stale).toMatchObject([{ alarm: 'u1:AIR-1', hours: 40 * 24 }, { alarm: 'u2:AIR-1' }]);
  });

  it('reckons over no time before the first row, and says that less than 30 days are too short', async () => {
    const journal = new JournalInMemory();
    journal.raise('u1:AIR-1', startMs + 38 * dayMs);
    const found = await report(journal);
    expect(found).toMatchObject({ days: 2, enough: false });
    expect(found.figures.find(({ id }) => id === 'annunciationsPerDay')?.value).toBe(0.5);
  });

  it('reckons from where the journal began, however long nothing was told then', async () => {
    const journal = new JournalInMemory();
    journal.beganMs = startMs + 20 * dayMs;
    journal.raise('u1:AIR-1', startMs + 38 * dayMs);
    const found = await report(journal);
    expect(found).toMatchObject({ from: '2026-05-21T00:00:00.000Z', days: 20 });
    expect(found.figures.find(({ id }) => id === 'annunciationsPerDay')?.value).toBe(0.05);
    expect(await report(journal, { fromMs: startMs + 39 * dayMs })).toMatchObject({ days: 1 });
    expect(await report(new JournalInMemory())).toMatchObject({ days: 0 });
  });

  it('counts as stale what has stood since before the first row that is at hand, as it stands', async () => {
    const journal = new JournalInMemory();
    journal.raise('u1:AIR-1', startMs + 38 * dayMs);
    const old = { entry: 'WATER-1', unit: 'u2', hall: 'h1', state: 'acknowledged', foldedUnder: null } as const;
    journal.stands = [
      { ...old, alarm: 'u2:WATER-1', sinceMs: startMs - 500 * dayMs },
      { ...old, alarm: 'u3:WATER-1', sinceMs: startMs - 500 * dayMs, mode: 'outOfService' },
      { ...old, alarm: 'u4:WATER-1', sinceMs: startMs - 500 * dayMs, foldedUnder: 'u2:WATER-1' },
      { ...old, alarm: 'u1:AIR-1', sinceMs: startMs - 500 * dayMs },
    ];
    expect((await report(journal)).stale).toMatchObject([
      { alarm: 'u2:WATER-1', hours: 540 * 24 },
      { alarm: 'u1:AIR-1' },
    ]);
    expect((await report(journal, { hall: hall?.id ?? '' })).stale).toEqual([]);
  });

  it('reckons over no time that is still to come, however far off the end is asked for', async () => {
    const journal = new JournalInMemory();
    journal.raise('u1:AIR-1', startMs + 38 * dayMs);
    const found = await report(journal, { toMs: startMs + 400 * dayMs });
    expect(found).toMatchObject({ to: '2026-06-10T00:00:00.000Z', days: 2 });
    expect(found.figures.find(({ id }) => id === 'annunciationsPerDay')?.value).toBe(0.5);
    const desk = deskOf(journal);
    const toCome = { fromMs: startMs + 41 * dayMs, toMs: startMs + 42 * dayMs, hall: null };
    expect(await desk.report(toCome)).toMatchObject({ fault: { code: 'QUERY_MALFORMED' } });
  });

  it('goes on where the first row was written by a clock that ran ahead and was set back', async () => {
    const journal = new JournalInMemory();
    journal.raise('u1:AIR-1', startMs + 900 * dayMs);
    journal.raise('u2:AIR-1', startMs + 38 * dayMs);
    expect(await report(journal)).toMatchObject({ days: 2, annunciations: 1 });
  });

  it('answers nothing from an empty journal, and no number that would look good', async () => {
    const found = await report(new JournalInMemory());
    expect(found).toMatchObject({ days: 0, enough: false, annunciations: 0 });
    const known = found.figures.filter(({ verdict }) => verdict !== 'nothing').map(({ id }) => id);
    expect(known).toEqual(['configuredAlarms']);
  });

  it('keeps to a hall, whose configured alarms are those of it alone', async () => {
    const journal = new JournalInMemory();
    journal.raise('u1:AIR-1', startMs + 39 * dayMs, { hall: hall?.id ?? '' });
    journal.raise('u2:AIR-1', startMs + 39 * dayMs, { hall: 'elsewhere' });
    const configured = (one: AlarmPerformance) => one.figures.find(({ id }) => id === 'configuredAlarms')?.value ?? 0;
    const [ofHall, ofSite] = [await report(journal, { hall: hall?.id ?? '' }), await report(journal)];
    expect([ofHall.annunciations, ofSite.annunciations]).toEqual([1, 2]);
    expect(configured(ofHall)).toBeGreaterThan(0);
    expect(configured(ofHall)).toBeLessThan(configured(ofSite));
  });

  it('refuses a hall that is not there, and an end before the begin', async () => {
    const desk = deskOf(new JournalInMemory());
    expect(await desk.report({ fromMs: null, toMs: null, hall: 'nowhere' })).toMatchObject({
      fault: { code: 'HALL_UNKNOWN' },
    });
    expect(await desk.report({ fromMs: 5, toMs: 5, hall: null })).toMatchObject({ fault: { code: 'QUERY_MALFORMED' } });
  });

  it('lets others run after every page and every figure', async () => {
    const journal = new JournalInMemory();
    for (let i = 0; i < 11; i += 1) journal.raise(`u${i}:AIR-1`, startMs + i);
    let pauses = 0;
    await deskOf(journal, () => {
      pauses += 1;
      return Promise.resolve();
    }).report({ fromMs: null, toMs: null, hall: null });
    expect(journal.pagesRead).toBe(3);
    expect(pauses).toBe(3 + figures.length);
  });
});

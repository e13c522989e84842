import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { SqliteAlarmJournal } from '../../../../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import type { AlarmTransition } from '../../../../../backend/src/evaluation/pipeline/outputs';
import { RunnerTrendDesk } from '../../../../../backend/src/runner/trend-desk/trend-desk';
import { readSpans } from '../../../../../backend/src/runner/trend-desk/read-spans';
import { record, startMs, transition } from '../../../../contract/journal-samples';
import { historyInMemory } from '../../../../helpers/history-in-memory';
import { smallSite } from '../../../../helpers/small-site';
import { temporaryFolder, type TemporaryFolder } from '../../../../helpers/temporary-folder';

let folder: TemporaryFolder;
let journal: SqliteAlarmJournal;
beforeEach(async () => {
  folder = await temporaryFolder();
  journal = new SqliteAlarmJournal(join(folder.path, 'journal.sqlite'));
});
afterEach(async () => {
  journal.close();
  await folder.stop();
});

const minute = 60_000;
const at = (minutes: number): number => startMs + minutes * minute;
const iso = (minutes: number): string => new Date(at(minutes)).toISOString();

/** One change of the alarm of a unit; what stands afterwards is kept as the judge would. */
function put(unit: string, minutes: number, change: Partial<AlarmTransition>): void {
  const of = {
    alarm: `${unit}:AIR-1`,
    entry: 'AIR-1',
    unit,
    atMs: at(minutes),
    sinceMs: at(minutes) - 3000,
    ...change,
  };
  const stands = of.to === undefined || of.to !== 'normal';
  const { alarm, entry, sinceMs } = of;
  const kept = record({
    alarm,
    entry,
    unit,
    sinceMs,
    state: of.to ?? 'unacknowledged',
    active: of.to !== 'returnedUnacknowledged',
  });
  journal.append([transition(of)], stands ? [kept] : [], at(minutes));
}
const raise = (unit: string, minutes: number, more: Partial<AlarmTransition> = {}): void => put(unit, minutes, more);
const acknowledge = (unit: string, minutes: number, sinceMinutes: number): void =>
  put(unit, minutes, {
    from: 'unacknowledged',
    to: 'acknowledged',
    cause: 'acknowledge',
    actor: 'Ines',
    sinceMs: at(sinceMinutes),
  });
const clear = (unit: string, minutes: number, sinceMinutes: number): void =>
  put(unit, minutes, { from: 'acknowledged', to: 'normal', cause: 'conditionClear', sinceMs: at(sinceMinutes) });

const read = (units: readonly string[], from: number, to: number) =>
  readSpans(journal, { units, halls: ['h1'], fromMs: at(from), toMs: at(to) }, () => Promise.resolve());
const told = async (units: readonly string[], from: number, to: number) =>
  (await read(units, from, to)).spans.map((span) => [span.alarm, span.from, span.to]);

describe('the spans of alarms', () => {
  it('are those of the hall as well, once, and of no other hall nor of units that are not asked for', async () => {
    const ofHall = (hall: string, to: 'unacknowledged' | 'normal', minutes: number, standing: boolean): void => {
      const of = { alarm: `${hall}:AMB-1`, entry: 'AMB-1', unit: null, hall, where: null, sinceMs: at(minutes) };
      const from = to === 'normal' ? 'unacknowledged' : 'normal';
      journal.append([transition({ ...of, from, to, atMs: at(minutes) })], standing ? [record(of)] : [], at(minutes));
    };
    for (const hall of ['h1', 'h2']) ofHall(hall, 'unacknowledged', 5, true);
    ofHall('h1', 'normal', 15, false);
    for (const unit of ['u1', 'u2']) raise(unit, 10, { alarm: `${unit}:INS-1`, entry: 'INS-1', hall: 'h1' });
    ofHall('h1', 'unacknowledged', 20, true);
    expect(
      (await read(['u1'], 0, 60)).spans.map(({ alarm, unit, hall, from, to }) => [alarm, unit, hall, from, to]),
    ).toEqual([
      ['h1:AMB-1', null, 'h1', iso(5), iso(15)],
      ['u1:INS-1', 'u1', 'h1', iso(10), null],
      ['h1:AMB-1', null, 'h1', iso(20), null],
    ]);
    expect(await told(['u1'], 30, 60)).toHaveLength(2);
  });

  it('reach from the raising of an alarm to the end of its condition, whoever acknowledged it between', async () => {
    raise('u1', 10);
    acknowledge('u1', 12, 10);
    clear('u1', 20, 10);
    const { spans } = await read(['u1'], 0, 60);
    expect(spans).toMatchObject([{ from: iso(10), to: iso(20), acknowledged: iso(12), priority: 1, entry: 'AIR-1' }]);
    expect(spans[0]?.title).not.toBe('AIR-1');
  });

  it('end where the condition is gone, though the alarm waits for its acknowledgement', async () => {
    raise('u1', 10);
    put('u1', 20, { from: 'unacknowledged', to: 'returnedUnacknowledged', cause: 'conditionClear' });
    put('u1', 40, { from: 'returnedUnacknowledged', to: 'normal', cause: 'acknowledge' });
    expect(await told(['u1'], 0, 60)).toEqual([['u1:AIR-1', iso(10), iso(20)]]);
    expect(await told(['u1'], 25, 60)).toEqual([]);
  });

  it('have no end while the alarm stands', async () => {
    raise('u1', 10);
    expect(await told(['u1'], 0, 60)).toEqual([['u1:AIR-1', iso(10), null]]);
  });

  it('hold what was raised before the period: told by its next row, in it or after it', async () => {
    raise('u1', 10, { sinceMs: at(9) });
    raise('u2', 11, { sinceMs: at(9) });
    clear('u1', 70, 9);
    clear('u2', 100, 9);
    expect(await told(['u1', 'u2'], 60, 80)).toEqual([
      ['u1:AIR-1', iso(9), iso(70)],
      ['u2:AIR-1', iso(9), iso(100)],
    ]);
  });

  it('hold what stands since long ago and of which no row follows', async () => {
    raise('u1', 10, { sinceMs: at(9) });
    raise('u2', 11);
    expect(await told(['u1'], 60, 80)).toEqual([['u1:AIR-1', iso(9), null]]);
  });

  it('tell two times of one alarm apart, and leave out what was before or came after', async () => {
    for (const start of [0, 10, 20, 30]) {
      raise('u1', start);
      clear('u1', start + 5, start);
    }
    expect(await told(['u1'], 7, 26)).toEqual([
      ['u1:AIR-1', iso(10), iso(15)],
      ['u1:AIR-1', iso(20), iso(25)],
    ]);
  });

  it('say which first-out an alarm followed from, also where that was found later', async () => {
    raise('u1', 10);
    const folded = record({
      alarm: 'u1:AIR-1',
      entry: 'AIR-1',
      unit: 'u1',
      stateSinceMs: at(10),
      foldedUnder: 'u1:X-1',
    });
    journal.append([], [folded], at(11));
    expect((await read(['u1'], 0, 60)).spans).toMatchObject([{ foldedUnder: 'u1:X-1' }]);
  });

  it('say from when on the journal can be searched', async () => {
    expect((await read(['u1'], 0, 60)).searchableFrom).toBeNull();
    raise('u1', 10);
    expect(await read(['u1'], 0, 60)).toMatchObject({ searchableFrom: iso(10), readTo: null });
  });

  it('say up to when rows were read where there are more than are read at once', async () => {
    const many = Array.from({ length: 1100 }, (_, i) =>
      transition({ unit: 'u1', alarm: 'u1:AIR-1', atMs: startMs + i * 1000, from: 'acknowledged', to: 'acknowledged' }),
    );
    journal.append(many, [record({ alarm: 'u1:AIR-1', unit: 'u1' })], startMs);
    const query = { units: ['u1'], fromMs: at(0), toMs: at(600) };
    // A page is 500 rows.
    const { readTo } = await readSpans(journal, { ...query, halls: [] }, () => Promise.resolve(), 2);
    expect(readTo).toBe(new Date(startMs + 999_000).toISOString());
  });
});

describe('spans that are asked for by many', () => {
  it('are read for two at a time, some wait, and more are refused', async () => {
    const site = smallSite();
    const units = [site.units[0]?.id ?? ''];
    const held: (() => void)[] = [];
    let isOpen = false;
    const desk = new RunnerTrendDesk({
      ...{ site: () => site, store: historyInMemory(site), nowMs: () => at(400), monotonicMs: () => 0 },
      journal: { page: () => ({ rows: [], next: 1 }), standing: () => [] },
      pause: () => (isOpen ? Promise.resolve() : new Promise((resolve) => held.push(resolve))),
    });
    const asked = Array.from({ length: 20 }, () => desk.alarmSpans({ units, fromMs: at(0), toMs: at(400) }));
    expect(held).toHaveLength(2);
    expect(await asked[19]).toMatchObject({ ok: false, fault: { code: 'TOO_MANY_REQUESTS' } });
    isOpen = true;
    for (const one of held) one();
    expect((await Promise.all(asked.slice(0, 18))).every(({ ok }) => ok)).toBe(true);
  });
});

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import type { PermitRecord } from '../../backend/src/evaluation/pipeline/permit-record';
import { record, startMs, transition } from './journal-samples';

let folder: string;
let journal: SqliteAlarmJournal;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline-then-'));
  journal = new SqliteAlarmJournal(join(folder, 'journal.sqlite'));
});
afterEach(() => {
  journal.close();
  rmSync(folder, { recursive: true, force: true });
});

const at = (second: number): number => startMs + second * 1000;
const air = (n: number) => ({ alarm: `unit-${n}:AIR-1`, entry: 'AIR-1' });

/** Raised by a second; the record is what stands from then on. */
function raise(n: number, second: number, more: object = {}): void {
  const when = { atMs: at(second), sinceMs: at(second - 3) };
  journal.append([transition({ ...air(n), ...when })], [record({ ...air(n), stateSinceMs: at(second), ...more })], 0);
}
const end = (n: number, second: number): void =>
  void journal.append(
    [transition({ ...air(n), from: 'unacknowledged', to: 'normal', cause: 'conditionClear', atMs: at(second) })],
    [],
    0,
  );
const then = (second: number) => {
  const found = journal.standingAt(at(second));
  if (found === null) throw new Error('rows of that time are sealed');
  return found;
};
const alarmsAt = (second: number): string[] =>
  then(second)
    .alarms.map(({ alarm }) => alarm)
    .sort();
const sortedNames = (alarms: readonly { readonly alarm: string; readonly state: string }[]): string[] =>
  alarms.map(({ alarm, state }) => `${alarm} ${state}`).sort();

describe('what stood at a past time', () => {
  it('is what the rows up to then add up to, to the ms', () => {
    raise(1, 10);
    raise(2, 20);
    end(1, 30);
    raise(1, 40);
    journal.appendSystem({ atMs: at(50), reason: 'of no alarm', actor: null }, 0);
    expect([5, 10, 25, 30, 40, 99].map(alarmsAt)).toEqual([
      [],
      ['unit-1:AIR-1'],
      ['unit-1:AIR-1', 'unit-2:AIR-1'],
      ['unit-2:AIR-1'],
      ['unit-1:AIR-1', 'unit-2:AIR-1'],
      ['unit-1:AIR-1', 'unit-2:AIR-1'],
    ]);
    expect(journal.standingAt(at(30) - 1)?.alarms).toHaveLength(2);
    expect(then(99).alarms).toEqual(journal.standing());
  });

  it('is what the standing alarms were after each step of a long random course', () => {
    let seed = 7;
    const random = (most: number): number => (seed = (seed * 48_271) % 2_147_483_647) % most;
    const stood = new Map<number, string[]>();
    const up = new Set<number>();
    for (let second = 1; second <= 300; second += 1) {
      const n = random(12);
      if (up.delete(n)) end(n, second);
      else {
        up.add(n);
        raise(n, second);
      }
      stood.set(
        second,
        journal
          .standing()
          .map(({ alarm }) => alarm)
          .sort(),
      );
    }
    for (const [second, alarms] of stood) expect(alarmsAt(second), `second ${second}`).toEqual(alarms);
  });

  it('has an alarm under the one that it followed from as of then, not as of when it came', () => {
    raise(1, 10);
    raise(2, 20);
    journal.append([], [record({ ...air(1), stateSinceMs: at(10), foldedUnder: 'unit-2:AIR-1' })], 0);
    raise(3, 30);
    const folded = (second: number) => then(second).alarms.find(({ alarm }) => alarm === 'unit-1:AIR-1')?.foldedUnder;
    expect([folded(15), folded(20), folded(35)]).toEqual([null, 'unit-2:AIR-1', 'unit-2:AIR-1']);
  });

  it('has the permits and the alerts that were open, and an alert beside the alarm of its name', () => {
    const permit = { id: 'p', unit: 'unit-1', branch: 'r5', openedMs: at(10), untilMs: at(99) } as PermitRecord;
    const who = { actor: 'Ines', station: 'desk', comment: null };
    journal.appendPermits([{ what: 'opened', permit, atMs: at(10), ...who }], 0);
    const alert = { ...air(1), alert: 'unit-1:AIR-1', unit: 'unit-1', hall: null, sinceMs: at(12) };
    const shown = { ...alert, value: null, limit: null, unitOfMeasure: null, where: null };
    journal.appendAlerts([{ what: 'came', alert: shown, atMs: at(12) }], 0);
    raise(1, 15);
    journal.appendPermits([{ what: 'closed', permit: { ...permit, closedMs: at(20) }, atMs: at(20), ...who }], 0);
    journal.appendAlerts([{ what: 'went', alert: shown, atMs: at(25) }], 0);
    const counts = (second: number) => {
      const { alarms, alerts, permits } = then(second);
      return [alarms.length, alerts.length, permits.length];
    };
    expect([9, 11, 13, 16, 21, 26].map(counts)).toEqual([
      [0, 0, 0],
      [0, 0, 1],
      [0, 1, 1],
      [1, 1, 1],
      [1, 1, 0],
      [1, 0, 0],
    ]);
  });

  it('is the same whatever was noted later of an alarm of then, and whatever people wrote into a comment', () => {
    raise(1, 10);
    raise(2, 60);
    const note = { hall: null, unit: 'unit-1', actor: 'Ines', station: 'desk', of: null, why: null, shift: null };
    const of = { cause: 'noteWritten', atMs: at(30), alarm: 'unit-1:AIR-1', text: 'It hissed then.' } as const;
    journal.appendNotes([{ ...note, ...of }], at(90));
    raise(3, 95);
    expect([40, 70, 96].map((second) => alarmsAt(second).length)).toEqual([1, 2, 3]);
    const acknowledged = { state: 'acknowledged', stateSinceMs: at(97) } as const;
    const said = { actor: 'Ines', station: 'desk', cause: 'acknowledge', comment: 'standing alarm updated' } as const;
    journal.append(
      [transition({ ...air(3), from: 'unacknowledged', to: 'acknowledged', atMs: at(97), ...said })],
      [record({ ...air(3), ...acknowledged })],
      0,
    );
    expect(then(98).alarms.find(({ alarm }) => alarm === 'unit-3:AIR-1')?.state).toBe('acknowledged');
  });

  it('is not told of sealed times by a note of later that speaks of them', async () => {
    const note = { hall: null, unit: 'unit-1', actor: 'Ines', station: 'desk', of: null, why: null, shift: null };
    raise(1, 10);
    const of = { cause: 'noteWritten', atMs: at(5), alarm: 'unit-1:AIR-1', text: 'It hissed then.' } as const;
    journal.appendNotes([{ ...note, ...of }], 1e6);
    journal.append([transition({ ...air(2), atMs: at(100) })], [record({ ...air(2) })], 1e6);
    await journal.sealOldest({ beforeMs: 1000, urgentMs: 1000, wallMs: 2e6 });
    expect(journal.standingAt(at(12))).toBeNull();
    expect(alarmsAt(101)).toHaveLength(2);
  });

  it('is what it was before the rows were sealed in which it began, for all that changed since', async () => {
    const permit = { id: 'p', unit: 'unit-1', branch: 'r5', openedMs: at(1), untilMs: at(99) } as PermitRecord;
    const who = { actor: 'Ines', station: 'desk', comment: null };
    const alert = { ...air(2), alert: 'unit-2:AIR-1', unit: 'unit-2', hall: null, sinceMs: at(1) };
    const shown = { ...alert, value: null, limit: null, unitOfMeasure: null, where: null };
    const change = (
      n: number,
      to: 'unacknowledged' | 'acknowledged' | 'normal',
      second: number,
      wallMs: number,
    ): void => {
      const now = { ...air(n), to, atMs: at(second) };
      const kept = to === 'normal' ? [] : [record({ ...air(n), state: to, stateSinceMs: at(second) })];
      journal.append([transition(now)], kept, wallMs);
    };
    journal.appendPermits([{ what: 'opened', permit, atMs: at(1), ...who }], 0);
    journal.appendAlerts([{ what: 'came', alert: shown, atMs: at(1) }], 0);
    for (const n of [1, 2, 3, 4]) change(n, 'unacknowledged', 1 + n, 0);
    for (const n of [2, 5]) change(n, 'normal', 20 + n, 2000);
    change(5, 'unacknowledged', 30, 2000);
    change(4, 'acknowledged', 31, 2000);
    for (const [second, n] of [6, 1, 4, 5, 6].entries())
      change(n, second === 0 ? 'unacknowledged' : 'normal', 100 + second, 1e6);
    journal.appendPermits([{ what: 'closed', permit: { ...permit, closedMs: at(106) }, atMs: at(106), ...who }], 1e6);
    journal.appendAlerts([{ what: 'went', alert: shown, atMs: at(107) }], 1e6);
    const seconds = [100, 101, 102, 103, 104, 105, 106, 107, 200];
    const told = () =>
      seconds.map((second) => {
        const { alarms, alerts, permits } =
          journal.standingAt(at(second)) ?? expect.fail(`of ${second} nothing is known`);
        return { alarms: sortedNames(alarms), alerts, permits };
      });
    const before = told();
    expect(before.map(({ alarms, permits, alerts }) => [alarms.length, permits.length, alerts.length])).toEqual([
      [5, 1, 1],
      [4, 1, 1],
      [3, 1, 1],
      [2, 1, 1],
      [1, 1, 1],
      [1, 1, 1],
      [1, 0, 1],
      [1, 0, 0],
      [1, 0, 0],
    ]);
    for (const beforeMs of [1000, 3000])
      expect(await journal.sealOldest({ beforeMs, urgentMs: beforeMs, wallMs: 2e6 })).toBeGreaterThan(3);
    journal.close();
    journal = new SqliteAlarmJournal(join(folder, 'journal.sqlite'));
    expect(told()).toEqual(before);
    expect(journal.verify().brokenAt).toBeNull();
  });

  it('is not known where rows of that time were sealed', async () => {
    for (let i = 0; i < 5; i += 1) raise(i, 10 + i);
    for (let i = 5; i < 9; i += 1)
      journal.append([transition({ ...air(i), atMs: at(100 + i) })], [record({ ...air(i) })], 1e6);
    await journal.sealOldest({ beforeMs: 1000, urgentMs: 1000, wallMs: 2e6 });
    expect(journal.standingAt(at(12))).toBeNull();
    expect(then(105).alarms).toHaveLength(6);
  });
});

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { journalRowSchema } from '@ebbline/shared/contract/alarm';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import type { AlertChange } from '../../backend/src/evaluation/pipeline/alert-record';
import type { PermitChange, PermitRecord } from '../../backend/src/evaluation/pipeline/permit-record';
import { raised, startMs } from './journal-samples';

let folder: string;
let journal: SqliteAlarmJournal;
const reopen = (): void => {
  journal.close();
  journal = new SqliteAlarmJournal(join(folder, 'journal.sqlite'));
};

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline-journal-'));
  journal = new SqliteAlarmJournal(join(folder, 'journal.sqlite'));
});
afterEach(() => {
  journal.close();
  rmSync(folder, { recursive: true, force: true });
});

const permit: PermitRecord = {
  id: 'unit-1-7',
  unit: 'unit-1',
  branch: 'r5',
  openedBy: 'Ines',
  station: '127.0.0.1',
  openedMs: startMs,
  untilMs: startMs + 3_600_000,
  expectedInLeakM3PerS: 0.0005,
  comment: 'hose of server 4',
  baseline: { branchFlowM3PerS: 0.0007, gasLoadM3PerS: null, waterVolumeM3: 0.17 },
  waitsFor: ['branchFlow', 'level'],
  closedBy: null,
  closedMs: null,
};
const opened: PermitChange = {
  what: 'opened',
  permit,
  atMs: startMs,
  actor: 'Ines',
  station: '127.0.0.1',
  comment: 'hose of server 4',
};
const closedByProgram: PermitChange = {
  what: 'closed',
  permit: { ...permit, closedMs: startMs + 9000 },
  atMs: startMs + 9000,
  actor: null,
  station: null,
  comment: null,
};

describe('permits in the journal', () => {
  it('stand until they are closed, over a restart, and apart from the alarms', () => {
    const [one, kept] = raised(1);
    journal.append([one], [kept], startMs);
    journal.appendPermits([opened], startMs);
    reopen();
    expect(journal.permits()).toEqual([permit]);
    expect(journal.standing()).toEqual([kept]);
    journal.appendPermits([closedByProgram], startMs + 9000);
    expect(journal.permits()).toEqual([]);
    expect(journal.standing()).toEqual([kept]);
    expect(journal.verify()).toEqual({ rows: 3, brokenAt: null });
  });

  it('say who opened them, for what and until when, and who or what closed them', () => {
    const [row] = journal.appendPermits([opened], startMs);
    expect(journalRowSchema.parse(row)).toEqual(row);
    expect(row).toMatchObject({ kind: 'action', actor: 'Ines', unit: 'unit-1', where: 'r5', alarm: 'permit/unit-1-7' });
    expect(row?.reason).toContain(new Date(permit.untilMs).toISOString());
    expect(row?.reason).toContain('hose of server 4');
    const [closed] = journal.appendPermits([closedByProgram], startMs + 9000);
    expect(closed).toMatchObject({ kind: 'system', actor: null });
  });
});

describe('alerts in the journal', () => {
  it('are on record without the state of an alarm, and nothing stands because of them', () => {
    const alert: AlertChange['alert'] = {
      alert: 'unit-1:FIL-1',
      entry: 'FIL-1',
      unit: 'unit-1',
      hall: 'north',
      sinceMs: startMs - 600_000,
      value: 2.1,
      limit: 2,
      unitOfMeasure: '1',
      where: null,
    };
    const rows = journal.appendAlerts(
      [
        { what: 'came', alert, atMs: startMs },
        { what: 'went', alert, atMs: startMs + 1000 },
      ],
      startMs + 1000,
    );
    expect(rows.map(({ kind, to, entry, reason }) => [kind, to, entry, reason])).toEqual([
      ['system', null, 'FIL-1', 'alert came'],
      ['system', null, 'FIL-1', 'alert went'],
    ]);
    expect(journal.standing()).toEqual([]);
    expect(journal.verify()).toEqual({ rows: 2, brokenAt: null });
  });

  it('stand until they go, beside an alarm of the same name, so that a restart finds them', () => {
    const [raisedThen, alarm] = raised(1);
    const alert: AlertChange['alert'] = {
      alert: alarm.alarm,
      entry: alarm.entry,
      unit: alarm.unit,
      hall: alarm.hall,
      sinceMs: startMs - 600_000,
      value: null,
      limit: null,
      unitOfMeasure: null,
      where: null,
      detail: 'Set point of supply temperature: 36.3 → 38.0 °C.',
    };
    journal.appendAlerts([{ what: 'came', alert, atMs: startMs }], startMs);
    journal.append([raisedThen], [alarm], startMs + 1000);
    expect(journal.alerts()).toEqual([alert]);
    expect(journal.standing()).toEqual([alarm]);
    expect(journal.permits()).toEqual([]);
    journal.appendAlerts([{ what: 'went', alert, atMs: startMs + 2000 }], startMs + 2000);
    expect(journal.alerts()).toEqual([]);
    expect(journal.standing()).toEqual([alarm]);
    expect(journal.verify()).toEqual({ rows: 3, brokenAt: null });
  });
});

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { journalRowSchema } from '@ebbline/shared/contract/alarm';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import type { TightnessChange, TightnessRecord } from '../../backend/src/evaluation/pipeline/tightness-record';
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

const test: TightnessRecord = {
  id: 'unit-1:tightness:7',
  unit: 'unit-1',
  startedBy: 'Ines',
  station: '127.0.0.1',
  startedMs: startMs,
  plannedMs: 1_800_000,
  acceptanceLimitM3PerS: 2.7e-6,
  dry: false,
  sourceIsolated: false,
  gasVolumeStatedM3: null,
  comment: 'after the new gasket',
  begin: { pressurePa: 20_000, temperatureC: 25, levelM: 0.6, gasVolumeM3: 0.51, areaM2: 0.25 },
  samples: 0,
  result: null,
  steadiness: 'tooEarly',
  verdict: null,
  endedFor: null,
  endedBy: null,
  endedMs: null,
};
const who = { actor: 'Ines', station: '127.0.0.1', comment: 'after the new gasket' };
const started: TightnessChange = { what: 'started', test, atMs: startMs, ...who };
const done: TightnessRecord = { ...test, verdict: 'passes', endedFor: 'completed', endedMs: startMs + 1_800_000 };
const ended: TightnessChange = {
  what: 'ended',
  test: done,
  atMs: startMs + 1_800_000,
  actor: null,
  station: null,
  comment: null,
};

describe('pressure-rise tests in the journal', () => {
  it('keep their whole record over a restart, before and after their end, apart from alarms, alerts and permits', () => {
    const [transition, record] = raised(1);
    journal.append([transition], [record], startMs);
    journal.appendTightness([started], startMs);
    reopen();
    expect(journal.tightness()).toEqual([test]);
    journal.appendTightness([ended], startMs + 1_800_000);
    reopen();
    expect(journal.tightness()).toEqual([done]);
    expect(journal.standing()).toEqual([record]);
    expect(journal.permits()).toEqual([]);
    expect(journal.alerts()).toEqual([]);
    expect(journal.verify().brokenAt).toBeNull();
  });

  it('are told in rows that the contract knows, with who, what came of it and the limit', () => {
    const rows = [...journal.appendTightness([started], startMs), ...journal.appendTightness([ended], startMs)];
    expect(rows.map((row) => journalRowSchema.parse(row))).toMatchObject([
      { kind: 'action', unit: 'unit-1', actor: 'Ines', limit: 2.7e-6, unit_of_measure: 'm3/s' },
      { kind: 'system', actor: null, reason: 'tightness test completed, passes' },
    ]);
    expect(rows[0]?.reason).toBe('tightness test started for 30 min: after the new gasket');
  });

  it.for([
    ['endedByPerson', 'ended by a person'],
    ['sourceStarted', 'the vacuum source started'],
    ['flowStarted', 'water began to flow'],
    ['levelJumped', 'the level jumped'],
    ['inputBad', 'an input was lost'],
    ['configuration', 'no longer has what it measures'],
    ['interrupted', 'interrupted by a restart'],
  ] as const)('that ended as %s say "%s"', ([endedFor, said]) => {
    const change: TightnessChange = { ...ended, test: { ...done, verdict: null, endedFor } };
    const [row] = journal.appendTightness([change], startMs);
    expect(row?.reason).toContain(said);
  });
});

import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import type { HandRecord } from '../../backend/src/evaluation/pipeline/hand-record';
import { temporaryFolder, type TemporaryFolder } from '../helpers/temporary-folder';
import { rewriteAsSchema } from './older-journal';

const startMs = Date.UTC(2031, 4, 6, 7);
const day = 86_400_000;

const record = (change: Partial<HandRecord> = {}): HandRecord => ({
  id: 'm1:water.copper.hand:1',
  unit: 'm1',
  parameter: 'copper',
  value: 0.00005,
  typed: { value: 0.05, unit: 'mg/L', as: null, sampleTemperature: null },
  takenMs: startMs - day,
  enteredMs: startMs,
  by: 'Ines',
  station: '127.0.0.1',
  note: 'laboratory sheet 12',
  corrects: null,
  ...change,
});
const corrected = record({
  id: 'm1:water.copper.hand:2',
  value: null,
  typed: null,
  corrects: record().id,
  note: 'slip',
});

let folder: TemporaryFolder;
let journal: SqliteAlarmJournal;
const file = () => join(folder.path, 'journal.sqlite');
beforeEach(async () => {
  folder = await temporaryFolder();
  journal = new SqliteAlarmJournal(file());
});
afterEach(async () => {
  journal.close();
  await folder.stop();
});

describe('a value that a person typed', () => {
  it('is a row of the journal with who, where, when and what, and stands among no alarms', () => {
    const [row] = journal.appendHand(record(), startMs + 5);
    expect(row).toMatchObject({
      kind: 'action',
      unit: 'm1',
      alarm: null,
      where: 'water.copper.hand',
      value: 0.00005,
      unit_of_measure: 'kg/m3',
      actor: 'Ines',
      station: '127.0.0.1',
      sourceTime: '2031-05-06T07:00:00.000Z',
      reason: 'Copper by hand, sample of 2031-05-05T07:00:00.000Z: laboratory sheet 12',
    });
    expect(journal.standing()).toEqual([]);
    expect(journal.permits()).toEqual([]);
    expect(journal.verify()).toEqual({ rows: 1, brokenAt: null });
  });

  it('is found again after the file was opened anew, with its corrections, in order', () => {
    journal.appendHand(record(), startMs);
    journal.appendHand(corrected, startMs + 1000);
    journal.close();
    journal = new SqliteAlarmJournal(file());
    expect(journal.hand(startMs - day)).toEqual([record(), corrected]);
    expect(journal.hand(startMs + day)).toEqual([]);
    expect(journal.verify().brokenAt).toBeNull();
  });

  it('can be kept in a journal that a program before this one wrote', () => {
    journal.appendSystem({ atMs: startMs, reason: 'started', actor: null }, startMs);
    journal.close();
    rewriteAsSchema(1, file());
    journal = new SqliteAlarmJournal(file());
    journal.appendHand(record(), startMs);
    expect(journal.hand(0)).toEqual([record()]);
    expect(journal.verify()).toEqual({ rows: 2, brokenAt: null });
  });
});

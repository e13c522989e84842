import { join } from 'node:path';
import Database from 'libsql';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { journalFactsSchema } from '@ebbline/shared/contract/journal-facts';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import type { ProgramEntry } from '../../backend/src/ports/program-entry';
import { temporaryFolder, type TemporaryFolder } from '../helpers/temporary-folder';
import { rewriteAsSchema } from './older-journal';

const startMs = Date.UTC(2031, 4, 6, 7);
const before = { version: '0.8.0', startedAt: '2031-05-05T07:00:00.000Z', endedAt: null };
const started: ProgramEntry = {
  cause: 'programStarted',
  program: { version: '0.9.0', before },
  reason: 'Ebbline 0.9.0 started',
};
const ended: ProgramEntry = {
  cause: 'programEnded',
  program: { version: '0.9.0', before: null },
  reason: 'Ebbline 0.9.0 ended in order',
};

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

describe('a start or an end of the program', () => {
  it('is a row of the journal with version and the run before, of no person and no alarm', () => {
    const [row] = journal.appendProgram(started, startMs);
    const at = '2031-05-06T07:00:00.000Z';
    expect(row).toMatchObject({ kind: 'system', cause: 'programStarted', actor: null, alarm: null, time: at });
    expect(row).toMatchObject({ sourceTime: at, reason: 'Ebbline 0.9.0 started' });
    expect(journalFactsSchema.parse(row?.facts)).toEqual({ program: started.program });
    expect(journal.standing()).toEqual([]);
    expect(journal.verify()).toEqual({ rows: 1, brokenAt: null });
  });

  it('is found as the newest of its kind, whatever was written since', () => {
    expect(journal.lastOfProgram()).toBeNull();
    journal.appendProgram(started, startMs);
    journal.appendProgram(ended, startMs + 1000);
    journal.appendSystem({ atMs: startMs, reason: 'the disk was full', actor: null }, startMs + 2000);
    expect(journal.lastOfProgram()).toMatchObject({ sequence: 2, cause: 'programEnded' });
  });

  it('is found by an index of its own, so that a start does not look at a year of rows', () => {
    const database = new Database(file(), { readonly: true });
    const query = `EXPLAIN QUERY PLAN SELECT sequence FROM journal
      WHERE cause IN ('programStarted', 'programEnded') ORDER BY sequence DESC LIMIT 1`;
    const plan = (database.prepare(query).all() as { detail: string }[]).map(({ detail }) => detail);
    database.close();
    expect(plan).toEqual([expect.stringContaining('journal_program')]);
  });

  it('goes into a journal that a program before this one wrote, whose runs nobody told', () => {
    journal.appendSystem({ atMs: startMs, reason: 'the disk was full', actor: null }, startMs);
    journal.close();
    rewriteAsSchema(4, file());
    journal = new SqliteAlarmJournal(file());
    expect(journal.lastOfProgram()).toBeNull();
    journal.appendProgram(started, startMs);
    expect(journal.lastOfProgram()).toMatchObject({ sequence: 2 });
    expect(journal.verify()).toEqual({ rows: 2, brokenAt: null });
  });
});

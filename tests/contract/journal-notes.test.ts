import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import type { NoteEntry } from '../../backend/src/ports/note-entry';
import { temporaryFolder, type TemporaryFolder } from '../helpers/temporary-folder';
import { rewriteAsSchema } from './older-journal';

const startMs = Date.UTC(2031, 4, 6, 7);
const hour = 3_600_000;

const note = (change: Partial<NoteEntry> = {}): NoteEntry => ({
  cause: 'noteWritten',
  atMs: startMs,
  hall: 'north',
  unit: 'm1',
  alarm: 'm1:AIR-1',
  actor: 'Ines',
  station: '127.0.0.1',
  text: 'The hose of server 4 weeps.',
  of: null,
  why: null,
  shift: null,
  ...change,
});

let folder: TemporaryFolder;
let journal: SqliteAlarmJournal;
const file = () => join(folder.path, 'journal.sqlite');
const sequences = (fromMs: number, toMs: number) => journal.notes(fromMs, toMs).map(({ sequence }) => sequence);
beforeEach(async () => {
  folder = await temporaryFolder();
  journal = new SqliteAlarmJournal(file());
});
afterEach(async () => {
  journal.close();
  await folder.stop();
});

describe('a note', () => {
  it('is a row of the journal with who, where, when, of what and about when, and is no standing alarm', () => {
    const [row] = journal.appendNotes([note()], startMs + hour);
    expect(row).toMatchObject({
      kind: 'action',
      cause: 'noteWritten',
      alarm: 'm1:AIR-1',
      unit: 'm1',
      hall: 'north',
      actor: 'Ines',
      station: '127.0.0.1',
      reason: 'The hose of server 4 weeps.',
      sourceTime: '2031-05-06T07:00:00.000Z',
      time: '2031-05-06T08:00:00.000Z',
      to: null,
      facts: null,
    });
    expect(journal.standing()).toEqual([]);
    expect(journal.verify()).toEqual({ rows: 1, brokenAt: null });
  });

  it('is found by the words of its text, by its alarm and by who wrote it', () => {
    journal.appendNotes([note(), note({ text: 'All quiet.', actor: 'Omar', alarm: null })], startMs);
    const found = (query: object) =>
      journal.page({ fromMs: null, toMs: null, after: null, ...query }).rows.map(({ sequence }) => sequence);
    expect(found({ text: 'weeps' })).toEqual([1]);
    expect(found({ alarm: 'm1:AIR-1' })).toEqual([1]);
    expect(found({ actor: 'Omar' })).toEqual([2]);
  });

  it('is found by the time that it speaks of, half-open, with all that follows one whenever that was', () => {
    journal.appendNotes([note({ atMs: startMs - 1 }), note(), note({ atMs: startMs + hour })], startMs);
    journal.appendSystem({ atMs: startMs, reason: 'no note', actor: null }, startMs);
    const later = { atMs: startMs + 30 * hour, of: 2, text: 'another rack' };
    journal.appendNotes([note({ cause: 'noteWithdrawn', ...later })], startMs);
    expect(sequences(startMs, startMs + hour)).toEqual([2, 5]);
    expect(journal.notes(startMs, startMs + hour)[1]?.facts).toEqual({ of: 2 });
  });

  it('goes into a journal that a program before this one wrote', () => {
    journal.appendSystem({ atMs: startMs, reason: 'started', actor: null }, startMs);
    journal.close();
    rewriteAsSchema(2, file());
    journal = new SqliteAlarmJournal(file());
    journal.appendNotes([note()], startMs);
    expect(sequences(0, Number.MAX_SAFE_INTEGER)).toEqual([2]);
    expect(journal.verify()).toEqual({ rows: 2, brokenAt: null });
  });
});

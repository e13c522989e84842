import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { journalReached } from '../../backend/src/runner/journal-reached';
import { journalBegan } from '../../backend/src/runner/performance/journal-began';
import { temporaryFolder, type TemporaryFolder } from '../helpers/temporary-folder';
import { record, startMs, transition } from './journal-samples';

const hourMs = 3_600_000;

describe('how far the program before this one had come, by its journal', () => {
  let folder: TemporaryFolder;
  let journal: SqliteAlarmJournal;

  beforeEach(async () => {
    folder = await temporaryFolder();
    journal = new SqliteAlarmJournal(join(folder.path, 'journal.db'));
  });

  afterEach(async () => {
    journal.close();
    await folder.stop();
  });

  it('is not known of an empty journal, nor of one that tells of the program alone', () => {
    expect(journalReached(journal)).toBeNaN();
    journal.appendSystem({ atMs: startMs, reason: 'the disk was full', actor: null }, startMs);
    expect(journalReached(journal)).toBeNaN();
  });

  it('is when the change of the newest row happened, on the clock that alarms run on, not when it was recorded', () => {
    journal.append([transition({ atMs: startMs })], [record()], startMs + hourMs);
    const later = { alarm: 'unit-2:AIR-1', entry: 'AIR-1' };
    journal.append([transition({ ...later, atMs: startMs + 5000 })], [record(later)], startMs + 2 * hourMs);
    journal.appendSystem({ atMs: startMs + hourMs, reason: 'the disk was full', actor: null }, startMs + hourMs);
    expect(journalReached(journal)).toBe(startMs + 5000);
  });

  it('is not told by what people wrote down of an alarm, as that speaks of any time', () => {
    journal.append([transition({ atMs: startMs })], [record()], startMs);
    const note = { hall: null, unit: 'unit-1', actor: 'Ines', station: 'desk', of: null, why: null, shift: null };
    const of = {
      cause: 'noteWritten',
      atMs: startMs - 24 * hourMs,
      alarm: 'unit-1:AIR-1',
      text: 'It hissed.',
    } as const;
    journal.appendNotes([{ ...note, ...of }], startMs + hourMs);
    expect(journalReached(journal)).toBe(startMs);
  });

  it('is that of the last row, not the latest time: what was written after the clock was set back counts', () => {
    journal.append([transition({ atMs: startMs })], [record()], startMs);
    journal.append([], [record({ stateSinceMs: startMs - hourMs })], startMs - hourMs + 1000);
    expect(journalReached(journal)).toBe(startMs - hourMs);
  });
});

describe('when the journal began', () => {
  it('is when its first row happened, and not the time that a note speaks of', async () => {
    const folder = await temporaryFolder();
    const journal = new SqliteAlarmJournal(join(folder.path, 'journal.db'));
    const note = {
      hall: null,
      unit: null,
      alarm: null,
      actor: 'Ines',
      station: 'desk',
      of: null,
      why: null,
      shift: null,
    };
    journal.appendNotes(
      [{ ...note, cause: 'noteWritten', atMs: startMs - 300 * 24 * hourMs, text: 'Moved in.' }],
      startMs,
    );
    expect(journalBegan(journal)).toBe(startMs);
    journal.appendSystem({ atMs: startMs + 7, reason: 'the disk was full', actor: null }, startMs + 7);
    expect(journalBegan(journal)).toBe(startMs);
    journal.close();
    await folder.stop();
  });
});

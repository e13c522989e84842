import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { backUpCommand } from '../../backend/src/main/care/back-up-command';
import { restoreCommand } from '../../backend/src/main/care/restore-command';
import { stopAfterEach } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { raised, startMs } from './journal-samples';

const keep = stopAfterEach();
let data: string;
let backUp: string;
let other: string;

beforeEach(async () => {
  const folder = keep(await temporaryFolder()).path;
  [data, backUp, other] = [join(folder, 'data'), join(folder, 'back-up'), join(folder, 'other')];
  await mkdir(data);
});

const journalAt = (folder: string): SqliteAlarmJournal => {
  const journal = new SqliteAlarmJournal(join(folder, 'journal.sqlite'));
  keep({ stop: () => journal.close() });
  return journal;
};
function addAlarms(journal: SqliteAlarmJournal, ...all: readonly number[]): void {
  for (const [one, kept] of all.map(raised)) journal.append([one], [kept], startMs);
}
async function ran(command: typeof backUpCommand, dataFolder: string): Promise<{ code: number; said: string }> {
  const said: string[] = [];
  const note = (text: string): void => void said.push(text);
  const code = await command({ args: [backUp], dataFolder, variables: {}, nowMs: startMs, say: note, complain: note });
  return { code, said: said.join('\n') };
}

/** A journal of six rows, five of which are sealed. */
async function sealedJournal(): Promise<SqliteAlarmJournal> {
  const journal = journalAt(data);
  addAlarms(journal, 1, 2, 3, 4, 5);
  expect(await journal.sealOldest({ beforeMs: startMs + 1, urgentMs: startMs + 1, wallMs: startMs })).toBe(5);
  addAlarms(journal, 6);
  return journal;
}

describe('sealed files of the journal', () => {
  it('go with a back-up, and after a restore the chain goes on from them', async () => {
    const journal = await sealedJournal();
    const written = await ran(backUpCommand, data);
    expect(written).toMatchObject({ code: 0, said: expect.stringContaining('journal: 6 rows') as string });
    expect(await ran(restoreCommand, other)).toMatchObject({ code: 0 });
    const again = journalAt(other);
    expect(again.verify()).toEqual({ rows: 6, brokenAt: null });
    expect(again.head()).toEqual(journal.head());
    expect(again.standing()).toEqual(journal.standing());
    addAlarms(again, 7);
    expect(again.verify()).toEqual({ rows: 7, brokenAt: null });
  });

  it('that are not there are told, and the rest goes with the back-up', async () => {
    const journal = await sealedJournal();
    await rm(join(data, 'journal-archive'), { recursive: true });
    const { code, said } = await ran(backUpCommand, data);
    expect(code).toBe(1);
    expect(said).toMatch(/names 1 sealed files that are not there, first rows-0+1-0+5\.jsonl\.gz/);
    await ran(restoreCommand, other);
    expect(journalAt(other).standing()).toEqual(journal.standing());
  });
});

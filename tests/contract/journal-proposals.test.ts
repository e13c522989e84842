import { join } from 'node:path';
import Database from 'libsql';
import { beforeEach, describe, expect, it } from 'vitest';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import type { SettingRecord } from '../../backend/src/evaluation/alarm-rules/settings/setting-record';
import { stopAfterEach } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { rewriteAsSchema } from './older-journal';

const startMs = Date.UTC(2031, 4, 6, 7);
const day = 86_400_000;
const before = { limit: 6000, deadband: 500, onDelaySeconds: 3, offDelaySeconds: 10, enabled: true, action: null };
const old = { ...before, low: null, reAlarmAfterSeconds: null } as unknown as SettingRecord['old'];
const asked = (id: string): SettingRecord => ({
  ...{ id, atMs: startMs, entry: 'MARGIN-1', scope: { kind: 'site' }, set: { limit: 7000 } },
  ...{ old, new: { ...old, limit: 7000 }, reason: 'a drill', link: 'order 17', operator: 'Ines', station: 'desk' },
});
const approved = (proposal: string): SettingRecord => ({
  ...asked(proposal),
  ...{ id: 'setting-1', operator: 'Ines', approvedBy: 'Mara', proposal },
});

const keep = stopAfterEach();
let file: string;
let journal: SqliteAlarmJournal;
beforeEach(async () => {
  file = join(keep(await temporaryFolder()).path, 'journal.sqlite');
  journal = new SqliteAlarmJournal(file);
  keep({ stop: () => journal.close() });
});
const reopen = (): void => {
  journal.close();
  journal = new SqliteAlarmJournal(file);
};
const waiting = (): string[] => journal.settingsWaiting().map(({ id }) => id);

describe('a change of a setting that waits for a second person', () => {
  it('is found again as it was asked for, until it is approved or withdrawn', () => {
    for (const id of ['proposal-1', 'proposal-2', 'proposal-3'])
      journal.appendSetting(asked(id), startMs, 'settingProposed');
    journal.appendSetting({ ...asked('proposal-1'), operator: 'Mara' }, startMs, 'settingWithdrawn');
    journal.appendSetting(approved('proposal-2'), startMs);
    reopen();
    expect(journal.settingsWaiting()).toEqual([asked('proposal-3')]);
    expect(journal.settings()).toEqual([approved('proposal-2')]);
  });

  it('says on record in what unit its limit is', () => {
    const [row] = journal.appendSetting(asked('proposal-1'), startMs, 'settingProposed');
    expect(row).toMatchObject({
      entry: 'MARGIN-1',
      unit_of_measure: 'Pa',
      facts: { setting: { new: { limit: 7000 } } },
    });
  });

  it('waits on when its row is sealed, and is not found again once it is decided after that', async () => {
    for (const id of ['proposal-1', 'proposal-2']) journal.appendSetting(asked(id), startMs, 'settingProposed');
    journal.appendSystem({ atMs: startMs, reason: 'the disk was full', actor: null }, startMs + 100 * day);
    const times = { beforeMs: startMs + 50 * day, urgentMs: startMs + 50 * day, wallMs: startMs + 1000 * day };
    expect(await journal.sealOldest(times)).toBe(2);
    reopen();
    expect(waiting()).toEqual(['proposal-1', 'proposal-2']);
    journal.appendSetting({ ...asked('proposal-1'), operator: 'Mara' }, startMs + 101 * day, 'settingWithdrawn');
    journal.appendSetting(approved('proposal-2'), startMs + 101 * day);
    reopen();
    expect(waiting()).toEqual([]);
    expect(journal.verify()).toMatchObject({ brokenAt: null });
  });

  it('is looked for by an index of its own, so that a start does not look at a year of rows', () => {
    const database = new Database(file, { readonly: true });
    const query = `EXPLAIN QUERY PLAN SELECT sequence, cause, record FROM journal
      WHERE cause IN ('settingProposed', 'settingWithdrawn') AND record IS NOT NULL`;
    const plan = (database.prepare(query).all() as { detail: string }[]).map(({ detail }) => detail);
    database.close();
    expect(plan).toEqual([expect.stringContaining('journal_proposals')]);
  });

  it('is taken by a journal that a program before this one wrote', () => {
    journal.appendSystem({ atMs: startMs, reason: 'the disk was full', actor: null }, startMs);
    journal.close();
    rewriteAsSchema(5, file);
    journal = new SqliteAlarmJournal(file);
    expect(waiting()).toEqual([]);
    journal.appendSetting(asked('proposal-1'), startMs, 'settingProposed');
    expect(waiting()).toEqual(['proposal-1']);
  });
});

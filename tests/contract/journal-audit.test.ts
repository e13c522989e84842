import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { journalRowSchema } from '@ebbline/shared/contract/alarm';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { ManualClock } from '@ebbline/shared/clock/manual-clock';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import type { AuditEntry } from '../../backend/src/ports/audit';
import { AuditInJournal } from '../../backend/src/runner/audit-in-journal';
import { temporaryFolder, type TemporaryFolder } from '../helpers/temporary-folder';
import { raised, startMs } from './journal-samples';

let folder: TemporaryFolder;
let journal: SqliteAlarmJournal;
const open = (): SqliteAlarmJournal => new SqliteAlarmJournal(join(folder.path, 'journal.sqlite'));
beforeEach(async () => {
  folder = await temporaryFolder();
  journal = open();
});
afterEach(async () => {
  journal.close();
  await folder.stop();
});

const raise = (): void => {
  const [transition, record] = raised(1);
  journal.append([transition], [record], startMs);
};

const signedIn: AuditEntry = { cause: 'signedIn', actor: 'Ines', station: '127.0.0.1', reason: 'signed in' };
const refused: AuditEntry = { cause: 'signInRefused', actor: null, station: '10.0.0.7', reason: 'sign-in refused' };
const all = { fromMs: null, toMs: null, after: null };

describe('people and access in the journal', () => {
  it('stand in the same chain as the alarms, by a person as actions and else as of the system', () => {
    raise();
    const rows = journal.appendAudit([signedIn, refused], startMs);
    expect(rows.map(({ kind, actor, station, reason }) => [kind, actor, station, reason])).toEqual([
      ['action', 'Ines', '127.0.0.1', 'signed in'],
      ['system', null, '10.0.0.7', 'sign-in refused'],
    ]);
    for (const row of rows) expect(() => journalRowSchema.parse(row)).not.toThrow();
    expect(journal.standing()).toHaveLength(1);
    journal.close();
    journal = open();
    expect(journal.verify()).toEqual({ rows: 3, brokenAt: null });
    expect(journal.standing()).toHaveLength(1);
  });

  it('can be left out of a page, which goes on behind them all the same', () => {
    journal.appendAudit([signedIn, refused], startMs);
    raise();
    journal.appendAudit(
      Array.from({ length: 600 }, () => refused),
      startMs,
    );
    expect(journal.page({ ...all, audit: false })).toMatchObject({ rows: [{ sequence: 3 }], next: null });
    expect(journal.page(all).rows).toHaveLength(500);
  });
});

describe('the audit in the journal', () => {
  const seconds = (count: number): number => count * 1000;

  it('writes five refusals of a station a minute, and the others as one number', () => {
    const clock = new ManualClock(startMs);
    const audit = new AuditInJournal(journal, clock);
    for (let i = 0; i < 40; i++) expect(audit.write(refused)).toBe(true);
    expect(audit.write(signedIn)).toBe(true);
    clock.advance(seconds(61));
    audit.write(refused);
    const { rows } = journal.page(all);
    expect(rows.map(({ reason }) => reason)).toEqual([
      ...Array.from({ length: 5 }, () => 'sign-in refused'),
      'signed in',
      '35 more within a minute like the last ones here (signInRefused)',
      'sign-in refused',
    ]);
    expect(rows[6]?.station).toBe('10.0.0.7');
  });

  it('writes at its end what was counted', () => {
    const audit = new AuditInJournal(journal, new ManualClock(startMs));
    const ticks: (() => void)[] = [];
    const following = audit.follow({ every: (_, work) => (ticks.push(work), { stop: () => undefined }) });
    for (let i = 0; i < 6; i++) audit.write(refused);
    for (const tick of ticks) tick();
    expect(journal.page(all).rows).toHaveLength(5);
    following.stop();
    expect(journal.page(all).rows.at(-1)?.reason).toMatch(/^1 more within a minute/);
  });

  it('answers no where the journal refuses, and keeps the sums for when it takes them again', () => {
    const clock = new ManualClock(startMs);
    let full = false;
    const filling = {
      appendAudit(entries: readonly AuditEntry[], wallMs: number) {
        if (full) throw new CodedError('JOURNAL_WRITE_FAILED', 'the disk is full');
        return journal.appendAudit(entries, wallMs);
      },
    };
    const audit = new AuditInJournal(filling, clock);
    for (let i = 0; i < 8; i++) audit.write(refused);
    full = true;
    clock.advance(seconds(61));
    expect(audit.write(signedIn)).toBe(false);
    full = false;
    expect(audit.write(signedIn)).toBe(true);
    expect(
      journal
        .page(all)
        .rows.map(({ reason }) => reason)
        .slice(5),
    ).toEqual(['3 more within a minute like the last ones here (signInRefused)', 'signed in']);
  });
});

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'libsql';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { journalRowSchema } from '@ebbline/shared/contract/alarm';
import { journalSchemaVersion } from '../../backend/src/connections/alarm-journal/journal-schema';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { acknowledged, raised, record, startMs, transition } from './journal-samples';

let folder: string;
let file: string;
let journal: SqliteAlarmJournal;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline-journal-'));
  file = join(folder, 'journal.sqlite');
  journal = new SqliteAlarmJournal(file);
});
afterEach(() => {
  journal.close();
  rmSync(folder, { recursive: true, force: true });
});

const everything = { fromMs: null, toMs: null, after: null };

function appendThree(): void {
  for (const n of [1, 2, 3]) journal.append(...asBatch(raised(n)), startMs + n);
}
function asBatch([one, kept]: ReturnType<typeof raised>): [(typeof one)[], (typeof kept)[]] {
  return [[one], [kept]];
}

/** Changes the file behind the journal's back, triggers taken off first. */
function tamper(sql: string): void {
  journal.close();
  const database = new Database(file);
  database.exec('DROP TRIGGER journal_refuses_update; DROP TRIGGER journal_refuses_delete');
  database.exec(sql);
  database.close();
  journal = new SqliteAlarmJournal(file);
}

describe('the alarm journal', () => {
  it('gives back rows of the contract with sequences that start at 1 and have no gap', () => {
    appendThree();
    const rows = journal.page(everything).rows;
    expect(rows.map((row) => row.sequence)).toEqual([1, 2, 3]);
    for (const row of rows) expect(journalRowSchema.parse(row)).toEqual(row);
  });

  it('keeps who acted, from where and why in a row of kind action', () => {
    journal.append(...asBatch(raised(1)), startMs);
    const [row] = journal.append(...asBatch(acknowledged(1)), startMs + 5000);
    expect(row).toMatchObject({
      kind: 'action',
      alarm: 'unit-1:AIR-1',
      from: 'unacknowledged',
      to: 'acknowledged',
      actor: 'operator 1',
      station: '127.0.0.1',
      reason: 'seen 1',
      time: '2025-06-01T00:00:05.000Z',
      sourceTime: '2025-06-01T00:00:00.000Z',
    });
  });

  it('keeps what the program itself did in a row of kind system', () => {
    const row = journal.appendSystem({ atMs: startMs, reason: 'site file reloaded', actor: null }, startMs + 1);
    expect(row).toMatchObject({ sequence: 1, kind: 'system', alarm: null, reason: 'site file reloaded' });
    expect(journal.page(everything).rows).toEqual([row]);
  });

  it('commits a whole batch or none of it', () => {
    const [first, standing] = raised(1);
    const orphan = transition({ alarm: 'unit-2:AIR-1' });
    expect(() => journal.append([first, orphan], [standing], startMs)).toThrow('JOURNAL_RECORD_MISSING');
    expect(journal.page(everything).rows).toEqual([]);
    expect(journal.standing()).toEqual([]);
  });

  it('gives the same rows and standing alarms after it is opened again', () => {
    appendThree();
    const before = [journal.page(everything), journal.standing(), journal.verify()];
    journal.close();
    journal = new SqliteAlarmJournal(file);
    expect([journal.page(everything), journal.standing(), journal.verify()]).toEqual(before);
    expect(journal.append(...asBatch(acknowledged(2)), startMs)[0]?.sequence).toBe(4);
    expect(journal.verify()).toEqual({ rows: 4, brokenAt: null });
  });

  it('drops a standing alarm when it returns to normal and follows a record that changes by itself', () => {
    appendThree();
    const folded = record({ alarm: 'unit-1:AIR-1', foldedUnder: 'unit-3:AIR-1' });
    const end = transition({ alarm: 'unit-2:AIR-1', from: 'unacknowledged', to: 'normal', cause: 'reset' });
    journal.append([end], [folded], startMs);
    expect(journal.standing().map((alarm) => [alarm.alarm, alarm.foldedUnder])).toEqual([
      ['unit-3:AIR-1', null],
      ['unit-1:AIR-1', 'unit-3:AIR-1'],
    ]);
    expect(journal.verify().brokenAt).toBeNull();
  });

  it('keeps only the last record where one alarm changes twice in a batch', () => {
    const up = transition();
    const down = transition({ from: 'unacknowledged', to: 'returnedUnacknowledged', cause: 'conditionClear' });
    journal.append([up, down], [record({ state: 'returnedUnacknowledged', active: false })], startMs);
    expect(journal.standing()).toEqual([record({ state: 'returnedUnacknowledged', active: false })]);
    expect(journal.verify()).toEqual({ rows: 2, brokenAt: null });
  });

  it.each(["UPDATE journal SET actor = 'another' WHERE sequence = 1", 'DELETE FROM journal WHERE sequence = 3'])(
    'refuses %s',
    (sql) => {
      appendThree();
      const database = new Database(file);
      expect(() => database.exec(sql)).toThrow('append-only');
      database.close();
      expect(journal.verify()).toEqual({ rows: 3, brokenAt: null });
    },
  );

  it('refuses a row that leaves a gap or takes the place of another', () => {
    appendThree();
    const database = new Database(file);
    for (const sequence of [2, 5]) {
      const insert = `INSERT OR REPLACE INTO journal (sequence, recorded_ms, happened_ms, kind, previous_hash, hash)
        VALUES (${sequence}, 0, 0, 'system', '', '')`;
      expect(() => database.exec(insert)).toThrow('append-only');
    }
    database.close();
  });

  it.each([
    ['a changed value', 'UPDATE journal SET value = value + 1 WHERE sequence = 2', 2],
    ['a changed name', "UPDATE journal SET actor = 'another' WHERE sequence = 3", 3],
    [
      'a changed record',
      'UPDATE journal SET record = replace(record, \'"priority":1\', \'"priority":3\') WHERE sequence = 1',
      1,
    ],
    ['a removed row', 'DELETE FROM journal WHERE sequence = 2', 2],
    ['a cut end', 'DELETE FROM journal WHERE sequence = 3', 3],
    ['a changed standing alarm', "UPDATE standing SET record = replace(record, 'true', 'false') WHERE sequence = 2", 2],
    ['a removed standing alarm', 'DELETE FROM standing WHERE sequence = 3', 3],
  ])('finds %s on disk', (_what, sql, brokenAt) => {
    appendThree();
    expect(journal.verify().brokenAt).toBeNull();
    tamper(sql);
    expect(journal.verify().brokenAt).toBe(brokenAt);
  });

  it('finds one byte altered in the file itself', () => {
    appendThree();
    journal.append(...asBatch(acknowledged(2)), startMs);
    journal.close();
    const bytes = readFileSync(file);
    const at = bytes.lastIndexOf('seen 2');
    expect(at).toBeGreaterThan(0);
    bytes.write('x', at);
    writeFileSync(file, bytes);
    journal = new SqliteAlarmJournal(file);
    expect(journal.verify()).toEqual({ rows: 4, brokenAt: 4 });
  });

  it('pages 500 rows at a time, in order, and says where to go on', () => {
    const batch = Array.from({ length: 1001 }, (_, index) => raised(index + 1));
    journal.append(
      batch.map(([one]) => one),
      batch.map(([, kept]) => kept),
      startMs,
    );
    const first = journal.page(everything);
    const second = journal.page({ ...everything, after: first.next });
    const third = journal.page({ ...everything, after: second.next });
    expect([first.rows.length, second.rows.length, third.rows.length]).toEqual([500, 500, 1]);
    expect([first.next, second.next, third.next]).toEqual([500, 1000, null]);
  });

  it('pages by when it happened, from inclusive and to exclusive', () => {
    for (const n of [0, 1, 2, 3]) {
      journal.append([transition({ atMs: startMs + n * 1000 })], [record()], startMs + 99_000);
    }
    const found = journal.page({ fromMs: startMs + 1000, toMs: startMs + 3000, after: null });
    expect(found).toMatchObject({ rows: [{ sequence: 2 }, { sequence: 3 }], next: null });
  });

  it('refuses a file that a newer program wrote', () => {
    journal.close();
    const database = new Database(file);
    database.exec('PRAGMA user_version = 99');
    database.close();
    expect(() => new SqliteAlarmJournal(file)).toThrow('JOURNAL_SCHEMA_NEWER');
    database.close();
    const back = new Database(file);
    back.exec(`PRAGMA user_version = ${journalSchemaVersion}`);
    back.close();
    journal = new SqliteAlarmJournal(file);
  });

  it('gives back any text and any number whole, with the chain unbroken', () => {
    let sequence = 0;
    const text = fc.string({ unit: 'binary' });
    const number = fc.oneof(fc.double(), fc.constant(null));
    fc.assert(
      fc.property(text, text, number, (comment, actor, value) => {
        const [one, kept] = acknowledged(1);
        const rows = journal.append([{ ...one, comment, actor, value }], [{ ...kept, acknowledgedBy: actor }], startMs);
        expect(journal.page({ ...everything, after: sequence }).rows).toEqual(rows);
        sequence = rows.at(-1)?.sequence ?? 0;
        if (!/\0|\p{Surrogate}/u.test(comment)) expect(rows[0]?.reason).toBe(comment);
      }),
      { numRuns: 200 },
    );
    expect(journal.verify().brokenAt).toBeNull();
  });
});

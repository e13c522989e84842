import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'libsql';
import { beforeEach, describe, expect, it } from 'vitest';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { verifyJournalCommand } from '../../backend/src/connections/alarm-journal/verify-journal-command';
import { stopAfterEach } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { raised, startMs } from './journal-samples';

const keep = stopAfterEach();
let file: string;

beforeEach(async () => {
  file = join(keep(await temporaryFolder()).path, 'journal.sqlite');
});

function filled(rows: number): SqliteAlarmJournal {
  const journal = new SqliteAlarmJournal(file);
  const batch = Array.from({ length: rows }, (_, index) => raised(index + 1));
  journal.append(
    batch.map(([transition]) => transition),
    batch.map(([, record]) => record),
    startMs,
  );
  return journal;
}

function verified(...args: string[]): { code: number; said: string } {
  const lines: string[] = [];
  const note = (line: string): void => void lines.push(line);
  return { code: verifyJournalCommand(args, file, note, note), said: lines.join('\n') };
}

function changed(sql: string): void {
  const database = new Database(file);
  database.exec('DROP TRIGGER journal_refuses_update; DROP TRIGGER journal_refuses_delete');
  database.exec(sql);
  database.close();
}

describe('npm run journal:verify', () => {
  it('tells rows, head sequence and hash of a whole journal', () => {
    filled(1200).close();
    const { code, said } = verified();
    expect(code).toBe(0);
    expect(said).toContain('1200 rows');
    expect(said).toMatch(/sequence 1200, hash [0-9a-f]{64}/);
  });

  it('reads the journal of a program that goes on writing, and changes nothing', () => {
    const journal = filled(3);
    expect(verified(file).code).toBe(0);
    const [transition, record] = raised(4);
    expect(journal.append([transition], [record], startMs)[0]?.sequence).toBe(4);
    expect(verified(file).said).toContain('4 rows');
    journal.close();
  });

  it('tells the first row that was changed', () => {
    filled(9).close();
    changed(`UPDATE journal SET value = 1 WHERE sequence IN (6, 8)`);
    const { code, said } = verified();
    expect(code).toBe(1);
    expect(said).toContain('broken at sequence 6');
  });

  it('tells a row that was cut off at the end', () => {
    filled(9).close();
    changed('DELETE FROM journal WHERE sequence = 9');
    expect(verified()).toMatchObject({ code: 1, said: expect.stringContaining('broken at sequence 9') as string });
  });

  it('finds a flipped bit of a row in the file itself', () => {
    filled(9).close();
    const bytes = readFileSync(file);
    const at = bytes.lastIndexOf('supply header');
    expect(at).toBeGreaterThan(0);
    bytes[at] = (bytes[at] ?? 0) ^ 1;
    writeFileSync(file, bytes);
    expect(verified().code).toBe(1);
  });

  it('says of what is no journal that nothing was checked', () => {
    expect(verified()).toMatchObject({ code: 2, said: expect.stringContaining('is not there') as string });
    const database = new Database(file);
    database.exec('CREATE TABLE other (a)');
    database.close();
    expect(verified()).toMatchObject({ code: 2, said: expect.stringContaining('holds no journal') as string });
    expect(verified('a', 'b')).toMatchObject({ code: 2, said: expect.stringContaining('Usage') as string });
  });

  it('refuses the journal of a later program', () => {
    filled(1).close();
    const database = new Database(file);
    database.exec('PRAGMA user_version = 999');
    database.close();
    expect(verified()).toMatchObject({ code: 2, said: expect.stringContaining('use the newer program') as string });
  });
});

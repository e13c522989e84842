import { chmodSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import Database from 'libsql';
import { beforeEach, describe, expect, it } from 'vitest';
import { rowsAFile } from '../../backend/src/connections/alarm-journal/seal-archive';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { verifyJournalCommand } from '../../backend/src/connections/alarm-journal/verify-journal-command';
import { stopAfterEach } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { restartKinds, typed } from './journal-kinds';
import { rewriteAsSchema } from './older-journal';
import { acknowledged, raised, record, startMs, transition } from './journal-samples';

const day = 86_400_000;
const keep = stopAfterEach();
let file: string;
let archives: string;
let journal: SqliteAlarmJournal;

beforeEach(async () => {
  const folder = keep(await temporaryFolder()).path;
  [file, archives] = [join(folder, 'journal.sqlite'), join(folder, 'journal-archive')];
  journal = new SqliteAlarmJournal(file);
  keep({ stop: () => journal.close() });
});

/** Alarms that were raised and acknowledged, two rows each, recorded on one day. */
function fill(from: number, to: number, dayOf: number): void {
  const both = Array.from(
    { length: to - from + 1 },
    (_, i) => [raised(from + i), acknowledged(from + i)] as const,
  ).flat();
  journal.append(
    both.map(([one]) => one),
    both.filter((_, i) => i % 2 === 1).map(([, kept]) => kept),
    startMs + dayOf * day,
  );
}
const seal = (beforeDay: number, urgentDay = beforeDay): Promise<number> =>
  journal.sealOldest({
    beforeMs: startMs + beforeDay * day,
    urgentMs: startMs + urgentDay * day,
    wallMs: startMs + 1000 * day,
  });
const reopen = (): void => {
  journal.close();
  journal = new SqliteAlarmJournal(file);
};
const sequences = (): number[] =>
  journal.page({ fromMs: null, toMs: null, after: null }).rows.map(({ sequence }) => sequence);

/** What a restart reads. */
const restored = () => ({
  standing: journal.standing(),
  permits: journal.permits(),
  tests: journal.tightness(),
  alerts: journal.alerts(),
  hand: journal.hand(0),
});
const verified = (): { code: number; said: string } => {
  const said: string[] = [];
  const note = (line: string): void => void said.push(line);
  return { code: verifyJournalCommand([], file, note, note), said: said.join('\n') };
};

describe('old rows of the journal', () => {
  it('go into a sealed file, from which the chain goes on', async () => {
    fill(1, 10, 0);
    fill(11, 12, 100);
    const head = journal.head();
    expect(await seal(50)).toBe(20);
    expect(readdirSync(archives)).toEqual(['rows-000000000001-000000000020.jsonl.gz']);
    expect(sequences()).toEqual([21, 22, 23, 24]);
    expect(journal.head()).toEqual(head);
    expect(journal.verify()).toEqual({ rows: 24, brokenAt: null });
    reopen();
    fill(13, 13, 101);
    expect(await seal(100.5)).toBe(4);
    expect(sequences()).toEqual([25, 26]);
    expect(journal.verify()).toEqual({ rows: 26, brokenAt: null });
    expect(verified()).toMatchObject({
      code: 0,
      said: expect.stringContaining('26 rows (24 of them in sealed files)') as string,
    });
  });

  it('can all go, and the next row follows the last one of them', async () => {
    fill(1, 3, 0);
    expect(await seal(1)).toBe(6);
    reopen();
    fill(4, 4, 2);
    expect(sequences()).toEqual([7, 8]);
    expect(journal.verify()).toEqual({ rows: 8, brokenAt: null });
  });

  it('stand in the file as JSON lines under their columns, with their hashes', async () => {
    fill(1, 1, 0);
    const [row] = journal.page({ fromMs: null, toMs: null, after: null }).rows;
    await seal(1);
    const text = gunzipSync(readFileSync(join(archives, readdirSync(archives)[0] ?? ''))).toString('utf8');
    const [header, first, ...rest] = text
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as unknown);
    const { columns } = header as { columns: string[] };
    expect(rest).toHaveLength(1);
    const sealed = Object.fromEntries(columns.map((column, i) => [column, (first as unknown[])[i]]));
    expect(sealed).toMatchObject({ sequence: 1, alarm: 'unit-1:AIR-1', unit: 'unit-1', hash: row?.hash });
  });

  it('stay while they are young, or too few for a file and not yet urgent', async () => {
    fill(1, 2, 10);
    expect(await seal(10)).toBe(0);
    expect(await seal(20, 5)).toBe(0);
    expect(existsSync(archives)).toBe(false);
    expect(await seal(20, 11)).toBe(4);
  });

  it('go with those around them where the clock ran ahead as they were written, and not before them', async () => {
    fill(1, 1, 0);
    fill(2, 2, 5000);
    expect(await seal(50)).toBe(2);
    fill(3, 3, 0);
    fill(4, 4, 100);
    fill(5, 5, 5000);
    expect(await seal(50)).toBe(4);
    expect(sequences()).toEqual([7, 8, 9, 10]);
    expect(await seal(50)).toBe(0);
    expect(await seal(150)).toBe(2);
    expect(sequences()).toEqual([9, 10]);
    expect(verified().code).toBe(0);
  });

  it('go also where more than fill a file were written by such a clock', async () => {
    fill(1, 1, 0);
    fill(2, 1200, 5000);
    fill(1201, 1201, 0);
    fill(1202, 1202, 100);
    expect([await seal(50), await seal(50), await seal(50)]).toEqual([2000, 402, 0]);
    expect(verified().code).toBe(0);
  });

  it('fill one file after the other, however many they are', async () => {
    fill(1, rowsAFile + 10, 0);
    expect([await seal(1, 0), await seal(1, 0), await seal(1, 0)]).toEqual([rowsAFile, rowsAFile, 0]);
    expect(journal.verify()).toEqual({ rows: 2 * rowsAFile + 20, brokenAt: null });
    expect(journal.page({ fromMs: startMs, toMs: startMs + 1, after: null, text: 'air' }).rows).toHaveLength(20);
  }, 30_000);

  it('lose nothing that a restart needs', async () => {
    fill(1, 5, 0);
    typed(journal);
    restartKinds(journal);
    const before = restored();
    expect(before).toMatchObject({ standing: { length: 6 }, permits: { length: 1 }, tests: { length: 1 } });
    expect([before.alerts.length, before.hand.length]).toEqual([1, 2]);
    const rows = journal.head().sequence;
    expect(await seal(400)).toBe(rows);
    expect(sequences()).toEqual([]);
    reopen();
    expect(restored()).toEqual(before);
    expect(journal.verify()).toEqual({ rows, brokenAt: null });
  });

  it('keep when the program ran, which past hours and the next start tell', async () => {
    const program = { version: '1.0.0', before: null };
    journal.appendProgram({ cause: 'programEnded', program, reason: 'ended in order' }, startMs);
    expect(await seal(10)).toBe(1);
    reopen();
    expect(journal.lastOfProgram()).toMatchObject({ sequence: 1, cause: 'programEnded', facts: { program } });
    expect(verified().code).toBe(0);
  });

  it('show a changed or missing file, and a change of what was kept', async () => {
    fill(1, 3, 0);
    typed(journal);
    fill(9, 9, 90);
    await seal(50);
    const [name = ''] = readdirSync(archives);
    const path = join(archives, name);
    const whole = readFileSync(path);
    chmodSync(path, 0o600);
    for (const spoil of [() => writeFileSync(path, Buffer.concat([whole, Buffer.from('x')])), () => rmSync(path)]) {
      spoil();
      expect(verified()).toMatchObject({ code: 1, said: expect.stringContaining(name) as string });
      expect(journal.verify().brokenAt).toBe(1);
      writeFileSync(path, whole);
    }
    expect(verified().code).toBe(0);
    for (const sql of [
      'UPDATE kept SET value = 1',
      'DELETE FROM kept',
      'UPDATE archive SET last = 99',
      'DELETE FROM archive',
    ])
      expect(() => inFile(sql), sql).toThrow('append-only');
    inFile('DROP TRIGGER kept_refuses_update; UPDATE kept SET value = value + 1');
    expect(verified()).toMatchObject({ code: 1, said: expect.stringMatching(/broken at sequence \d/) as string });
  });

  it('leave only into a file that holds them', async () => {
    fill(1, 3, 0);
    const refused = [
      'DELETE FROM journal WHERE sequence = 1',
      `INSERT INTO archive SELECT 1, 2, previous_hash, 'no hash', 'f', 's', 0 FROM journal WHERE sequence = 1`,
      `INSERT INTO archive SELECT 2, 2, previous_hash, hash, 'f', 's', 0 FROM journal WHERE sequence = 2`,
      `INSERT INTO kept SELECT * FROM (SELECT * FROM journal) WHERE sequence = 1; UPDATE kept SET hash = ''`,
    ];
    for (const sql of refused) expect(() => inFile(sql), sql).toThrow('append-only');
    await seal(1);
    expect(() =>
      inFile(
        "INSERT INTO journal (sequence, recorded_ms, happened_ms, kind, previous_hash, hash) VALUES (2, 0, 0, 'system', '', '')",
      ),
    ).toThrow('append-only');
  });

  it('of a former program are brought up, sealed and walked as one chain, and new facts follow', async () => {
    fill(1, 3, 0);
    journal.close();
    rewriteAsSchema(2, file);
    journal = new SqliteAlarmJournal(file);
    expect(journal.verify()).toEqual({ rows: 6, brokenAt: null });
    expect(journal.page({ fromMs: null, toMs: null, after: null, unit: 'unit-1', text: 'seen' }).rows).toHaveLength(3);
    const told = {
      ...transition({ alarm: 'unit-9:AIR-1' }),
      quality: 'uncertain',
      class: 'air',
      position: 'hall-1',
    } as const;
    const [row] = journal.append([told], [record({ alarm: 'unit-9:AIR-1' })], startMs + 100 * day);
    expect(row?.facts).toEqual({ quality: 'uncertain', class: 'air', position: 'hall-1' });
    expect(await seal(50)).toBe(6);
    expect(journal.verify()).toEqual({ rows: 7, brokenAt: null });
    expect(await seal(200)).toBe(1);
    expect(journal.verify()).toEqual({ rows: 7, brokenAt: null });
  });

  it('stay where they are when the disk refuses the file, which is told', async () => {
    fill(1, 3, 0);
    writeFileSync(archives, 'a file where the folder is to be');
    await expect(seal(1)).rejects.toThrow('JOURNAL_SEAL_FAILED');
    expect(sequences()).toHaveLength(6);
    rmSync(archives);
    expect(await seal(1)).toBe(6);
  });
});

function inFile(sql: string): void {
  const database = new Database(file);
  try {
    database.exec(sql);
  } finally {
    database.close();
  }
}

import { existsSync, readFileSync } from 'node:fs';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import Database from 'libsql';
import { describe, expect, it } from 'vitest';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { EnergySumsFile, energySumsFileName } from '../../backend/src/connections/energy-sums/energy-sums-file';
import { backUpCommand } from '../../backend/src/main/care/back-up-command';
import { restoreCommand } from '../../backend/src/main/care/restore-command';
import { stopAfterEach } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { raised, startMs } from './journal-samples';

const keep = stopAfterEach();
const dayMs = 86_400_000;

/** A data folder with a journal, what was learnt, and sums of many days. */
async function filled(): Promise<{ data: string; backUp: string; other: string; sums: string }> {
  const folder = keep(await temporaryFolder()).path;
  const [data, backUp, other] = [join(folder, 'data'), join(folder, 'back-up'), join(folder, 'other')];
  await mkdir(data);
  const journal = new SqliteAlarmJournal(join(data, 'journal.sqlite'));
  const [transition, record] = raised(1);
  journal.append([transition], [record], startMs);
  journal.close();
  await writeFile(join(data, 'learnt.bin'), 'learnt');
  const sums = join(data, energySumsFileName);
  const file = new EnergySumsFile(sums, 'embedded');
  const days = Array.from({ length: 400 }, (_, day) => ({
    startMs: day * dayMs,
    endMs: (day + 1) * dayMs,
    day: new Float64Array(8).fill(day),
    hours: new Float64Array(8 * 24).fill(day),
  }));
  file.keep('unit-1', 'recipe', days);
  file.close();
  // All of it in the file itself, as after a while.
  const database = new Database(sums);
  database.pragma('wal_checkpoint(TRUNCATE)');
  database.close();
  return { data, backUp, other, sums };
}

async function ran(command: typeof backUpCommand, folder: string, backUp: string) {
  const lines: string[] = [];
  const note = (line: string): void => void lines.push(line);
  const args = [backUp];
  const code = await command({ args, dataFolder: folder, variables: {}, nowMs: startMs, say: note, complain: note });
  return { code, said: lines.join('\n') };
}

/** From the third page on nothing is as it was written. */
const withinSpoilt = (whole: Buffer): Buffer => Buffer.from(whole).fill(0xa5, 2 * 4096);

describe('a back-up where the sums of energy are damaged', () => {
  it.for([
    ['no database', () => Buffer.from('nothing of ours '.repeat(1000))],
    ['damaged within', withinSpoilt],
  ] as const)('%s: has all the rest, says that they are left out, and can be restored', async ([, spoil]) => {
    const { data, backUp, other, sums } = await filled();
    await writeFile(sums, spoil(readFileSync(sums)));
    const done = await ran(backUpCommand, data, backUp);
    expect(done).toMatchObject({ code: 0, said: expect.stringContaining('energy-sums.sqlite is damaged') as string });
    expect(existsSync(join(backUp, energySumsFileName))).toBe(false);
    expect(JSON.parse(await readFile(join(backUp, 'back-up.json'), 'utf8'))).not.toHaveProperty('schemas.energySums');
    expect(await ran(restoreCommand, other, backUp)).toMatchObject({ code: 0 });
    expect(await readFile(join(other, 'learnt.bin'), 'utf8')).toBe('learnt');
  });

  it('that are whole has them, and says nothing of them', async () => {
    const { data, backUp } = await filled();
    const done = await ran(backUpCommand, data, backUp);
    expect(done.code).toBe(0);
    expect(done.said).not.toContain('left out');
    expect(existsSync(join(backUp, energySumsFileName))).toBe(true);
  });
});

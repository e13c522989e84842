import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { bundle, type Bundle } from './journal-bundle';

let child: Bundle;
beforeAll(async () => {
  child = await bundle(new URL('./journal-kill.child.ts', import.meta.url));
}, 60_000);
afterAll(() => child.remove());

/** Starts a writer and kills it once it has confirmed that many rows; gives back every confirmed row. */
async function confirmedUntilKilled(file: string, count: number): Promise<JournalRow[]> {
  const writer = spawn(process.execPath, [child.file, file], { stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = once(writer, 'exit');
  const rows: JournalRow[] = [];
  for await (const line of createInterface({ input: writer.stdout })) {
    // The last line may be cut by the kill; a line is a confirmation only when it is whole.
    if (line.endsWith('}')) rows.push(JSON.parse(line) as JournalRow);
    if (rows.length === count) writer.kill('SIGKILL');
  }
  expect((await ended)[1]).toBe('SIGKILL');
  return rows;
}

function allRows(journal: SqliteAlarmJournal): JournalRow[] {
  const rows: JournalRow[] = [];
  for (let after: number | null = 0; after !== null;) {
    const page = journal.page({ fromMs: null, toMs: null, after });
    rows.push(...page.rows);
    after = page.next;
  }
  return rows;
}

describe('a journal whose process is killed while it writes', () => {
  it.each([1, 37, 300])(
    'holds every confirmed row by value after SIGKILL at row %i',
    async (count) => {
      const file = join(child.folder, `killed-${count}.sqlite`);
      const confirmed = await confirmedUntilKilled(file, count);
      expect(confirmed.length).toBeGreaterThanOrEqual(count);

      const journal = new SqliteAlarmJournal(file);
      const kept = allRows(journal);
      expect(kept.slice(0, confirmed.length)).toEqual(confirmed);
      expect(journal.verify()).toEqual({ rows: kept.length, brokenAt: null });
      const alarmsRaised = new Set(kept.map((row) => row.alarm));
      expect(new Set(journal.standing().map((standing) => standing.alarm))).toEqual(alarmsRaised);
      journal.close();
    },
    60_000,
  );
});

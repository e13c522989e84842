import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { failpointNames } from '../../backend/src/ports/failpoint';
import { temporaryFolder } from '../helpers/temporary-folder';
import { bundle, type Bundle } from './journal-bundle';
import { restartKinds, typed } from './journal-kinds';
import { raised, startMs } from './journal-samples';

const places = failpointNames.filter((name) => name.startsWith('journal-archive-'));
const beforeMs = startMs + 1000;
let child: Bundle;
beforeAll(async () => {
  child = await bundle(new URL('./journal-sealed-kill.child.ts', import.meta.url));
}, 60_000);
afterAll(() => child.remove());

async function killedAt(place: string, file: string): Promise<NodeJS.Signals | null> {
  const env = { ...process.env, EBBLINE_TEST_FAILPOINT: place };
  const sealing = spawn(process.execPath, [child.file, file, String(beforeMs)], { stdio: 'inherit', env });
  return (await once(sealing, 'exit'))[1] as NodeJS.Signals | null;
}

/** All that is told of a journal, sealed rows left out. */
const told = (journal: SqliteAlarmJournal) => ({
  head: journal.head(),
  verified: journal.verify(),
  standing: journal.standing(),
  hand: journal.hand(0),
  permits: journal.permits(),
});

it('is tried at every place', () => {
  expect(places.length).toBeGreaterThanOrEqual(4);
});

it.each(places)(
  'killed at %s, sealing loses and doubles no row, and goes on',
  async (place) => {
    const folder = await temporaryFolder();
    const file = join(folder.path, 'journal.sqlite');
    let journal = new SqliteAlarmJournal(file);
    const batch = Array.from({ length: 300 }, (_, i) => raised(i + 1));
    journal.append(
      batch.map(([one]) => one),
      batch.map(([, kept]) => kept),
      startMs,
    );
    typed(journal);
    restartKinds(journal);
    journal.append(...([[raised(1)[0]], [raised(1)[1]]] as const), startMs + 5000);
    const before = told(journal);
    journal.close();

    expect(await killedAt(place, file)).toBe('SIGKILL');
    journal = new SqliteAlarmJournal(file);
    expect(told(journal)).toEqual(before);
    const live = journal.page({ fromMs: null, toMs: null, after: null, order: 'newest' }).rows.length;
    const rows = before.head.sequence;
    expect([1, rows]).toContain(live);
    expect(live === 1).toBe(place === 'journal-archive-after-commit');

    await journal.sealOldest({ beforeMs, urgentMs: beforeMs, wallMs: beforeMs });
    expect(told(journal)).toEqual(before);
    expect(journal.page({ fromMs: null, toMs: null, after: null }).rows).toMatchObject([{ sequence: rows }]);
    expect(readdirSync(join(dirname(file), 'journal-archive'))).toHaveLength(1);
    journal.close();
    await folder.stop();
  },
  60_000,
);

import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { SqliteAlarmJournal } from '../../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { SystemClock } from '../../../backend/src/connections/system-clock/system-clock';
import { peopleInMemory } from '../../helpers/people-in-memory';
import { bundle, type Bundle } from '../journal-bundle';

let child: Bundle;
beforeAll(async () => {
  child = await bundle(new URL('./kill.child.ts', import.meta.url));
}, 60_000);
afterAll(() => child.remove());

describe('people whose program is killed while one is added', () => {
  test.for([
    ['before', ['First', 'Second']],
    ['after', ['First', 'Second', 'Third']],
  ] as const)('right %s the record is written: nothing is done without a record', ([when, recorded]) => {
    const folder = join(child.folder, when);
    mkdirSync(folder);
    const { signal, stderr } = spawnSync(process.execPath, [child.file, folder, when], { encoding: 'utf8' });
    expect([signal, stderr]).toEqual(['SIGKILL', '']);

    const people = peopleInMemory({ path: join(folder, 'people.db'), clock: new SystemClock() });
    expect(people.people().map(({ name }) => name)).toEqual(['Ada', 'First', 'Second']);
    expect(people.setUpNeeded()).toBe(false);
    people.close();
    const journal = new SqliteAlarmJournal(join(folder, 'journal.sqlite'));
    const { rows } = journal.page({ fromMs: null, toMs: null, after: null });
    expect(rows.slice(1).map(({ reason }) => reason)).toEqual(recorded.map((name) => `added ${name} as operator`));
    expect(journal.verify().brokenAt).toBeNull();
    journal.close();
  });
});

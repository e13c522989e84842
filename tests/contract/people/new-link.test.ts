import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { SqliteAlarmJournal } from '../../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { newLinkCommand } from '../../../backend/src/main/care/new-link-command';
import { projectRoot } from '../../helpers/ebbline';
import { firstAdmin, goodPassword, peopleInMemory, station } from '../../helpers/people-in-memory';
import { temporaryFolder, type TemporaryFolder } from '../../helpers/temporary-folder';
import { SystemClock } from '../../../backend/src/connections/system-clock/system-clock';

const backend = join(projectRoot, 'backend');
const { lockDataFolder } = (await import(pathToFileURL(join(backend, 'build', 'lock-data-folder.mjs')).href)) as {
  lockDataFolder(folder: string): { readonly ok: true; release(): void } | { readonly ok: false };
};

let folder: TemporaryFolder;
beforeEach(async () => {
  folder = await temporaryFolder();
});
afterEach(() => folder.stop());

const people = (): ReturnType<typeof peopleInMemory> =>
  peopleInMemory({ path: join(folder.path, 'people.db'), clock: new SystemClock() });

function run(...args: string[]): { code: number; said: string[]; complained: string[] } {
  const [said, complained]: [string[], string[]] = [[], []];
  const code = newLinkCommand({
    ...{ args, dataFolder: folder.path },
    say: (line) => said.push(line),
    complain: (line) => complained.push(line),
  });
  return { code, said, complained };
}

describe('people:new-link', () => {
  test('lets the last admin in again by a link that is good once, and the journal tells of it', async () => {
    let store = people();
    const old = await firstAdmin(store, 'Ada Lovett');
    store.close();

    const { code, said, complained } = run('ada', 'lovett');
    expect([code, complained]).toEqual([0, []]);
    const link = said.at(-1)?.replace(/^\/set-up#/, '') ?? '';
    expect(link).toMatch(/^[\w-]{43}$/);

    store = people();
    expect(store.setUpNeeded()).toBe(false);
    expect(store.sessionOf(old.secret, false)).toBeNull();
    const wrong = await store.signIn({ name: 'Ada Lovett', password: goodPassword }, station);
    expect(wrong).toMatchObject({ fault: { code: 'SIGN_IN_REFUSED' } });
    expect(await store.setUp({ link, password: 'another kettle, same willows' }, station)).toMatchObject({
      value: { caller: { name: 'Ada Lovett', role: 'admin' } },
    });
    expect(await store.setUp({ link, password: 'yet another willow kettle' }, station)).toMatchObject({
      fault: { code: 'SET_UP_LINK_UNKNOWN' },
    });
    store.close();

    const journal = new SqliteAlarmJournal(join(folder.path, 'journal.sqlite'));
    const { rows } = journal.page({ fromMs: null, toMs: null, after: null });
    expect(rows.map(({ kind, station: from, reason }) => [kind, from, reason])).toEqual([
      ['system', 'this machine', 'new link for Ada Lovett, made at the machine itself'],
    ]);
    expect(JSON.stringify(rows)).not.toContain(link);
    journal.close();
  });

  test('tells who there is where it is given another name, and changes nothing', async () => {
    const store = people();
    const { secret } = await firstAdmin(store);
    store.close();
    expect(run('Eve')).toMatchObject({ code: 1, said: [], complained: [expect.stringContaining('Admins are: Ada')] });
    const again = people();
    expect(again.sessionOf(secret, false)).not.toBeNull();
    again.close();
  });

  test.for([[[]], [['--help']]])('says how it is called where it is given %j', ([args]) => {
    expect(run(...(args ?? []))).toMatchObject({ code: 2, complained: [expect.stringContaining('Usage')] });
  });

  test('makes no file where there was none', () => {
    expect(run('Ada')).toMatchObject({ code: 2, complained: [expect.stringContaining('EBBLINE_DATA')] });
  });

  test('is refused while the program runs', () => {
    const lock = lockDataFolder(folder.path);
    const program = join(backend, 'people-new-link.mjs');
    const env = { ...process.env, EBBLINE_DATA: folder.path };
    const { status, stderr } = spawnSync(process.execPath, [program, 'Ada'], { env, encoding: 'utf8' });
    if (lock.ok) lock.release();
    expect(status).toBe(1);
    expect(stderr).toMatch(/^No link was made: Another Ebbline runs/);
  });
});

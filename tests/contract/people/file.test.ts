import { randomBytes } from 'node:crypto';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'libsql';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { ManualClock } from '@ebbline/shared/clock/manual-clock';
import { createPeople, type KeptPeople } from '../../../backend/src/connections/people/create-people';
import { peopleSchemaVersion } from '../../../backend/src/connections/people/people-schema';
import { cheapHashes, firstAdmin, goodPassword, ListedAudit, station } from '../../helpers/people-in-memory';
import { temporaryFolder, type TemporaryFolder } from '../../helpers/temporary-folder';

const startMs = Date.UTC(2026, 0, 5, 6);
let folder: TemporaryFolder;
let path: string;
const opened: KeptPeople[] = [];
const faults: unknown[] = [];
const audit = new ListedAudit();
const clock = new ManualClock(startMs);

beforeEach(async () => {
  folder = await temporaryFolder();
  path = join(folder.path, 'people.db');
  faults.length = 0;
  audit.entries.length = 0;
});
afterEach(async () => {
  for (const people of opened.splice(0)) people.close();
  await folder.stop();
});

function open(cost = cheapHashes): KeptPeople {
  const report = (fault: unknown): void => void faults.push(fault);
  const people = createPeople({ path, audit, clock, random: randomBytes, demo: false, cost, report });
  opened.push(people);
  return people;
}
const close = (people: KeptPeople): void => opened.splice(opened.indexOf(people), 1)[0]?.close();

function inFile(statement: string): void {
  const database = new Database(path);
  database.exec(statement);
  database.close();
}

describe('people.db', () => {
  test('is for its owner alone, also where it was not, with the log beside it', async () => {
    writeFileSync(path, '', { mode: 0o644 });
    await firstAdmin(open());
    for (const end of ['', '-wal']) expect(statSync(`${path}${end}`).mode & 0o777).toBe(0o600);
  });

  test('keeps people, sessions, links and tokens over a restart, and when someone last acted', async () => {
    const before = open();
    const { secret, caller } = await firstAdmin(before);
    const link = await before.addPerson({ name: 'Ines', role: 'operator' }, caller, station);
    const token = await before.addToken({ name: 'wall', rights: ['look'], days: 9 }, caller, station);
    if (!link.ok || !token.ok) throw new Error('not added');
    clock.advance(3_000_000);
    before.sessionOf(secret, true);
    before.tokenOf(token.value.secret);
    const [people, tokens] = [before.people(), before.tokens()];
    close(before);

    clock.advance(3_000_000);
    const after = open();
    expect(after.people()).toEqual(people);
    expect(after.tokens()).toEqual(tokens);
    expect(after.sessionOf(secret, false)).toMatchObject({ name: 'Ada', csrf: caller.csrf, id: caller.id });
    expect(after.tokenOf(token.value.secret)?.name).toBe('wall');
    const asked = { link: link.value.link.replace('/set-up#', ''), password: goodPassword };
    expect(await after.setUp(asked, station)).toMatchObject({ ok: true });
    expect(await after.signIn({ name: 'Ada', password: goodPassword }, station)).toMatchObject({ ok: true });
  });

  test('makes a link for the first admin anew at each start, and the old one is worth nothing', async () => {
    const before = open();
    const old = before.firstLink() ?? '';
    close(before);
    const after = open();
    expect(after.firstLink()).not.toBe(old);
    const asked = { link: old, name: 'Eve', password: goodPassword };
    expect(await after.setUp(asked, station)).toMatchObject({ fault: { code: 'SET_UP_LINK_UNKNOWN' } });
  });

  test('holds no secret and no password', async () => {
    const people = open();
    const first = people.firstLink() ?? '';
    const { secret, caller } = await firstAdmin(people);
    const link = await people.addPerson({ name: 'Ines', role: 'operator' }, caller, station);
    const token = await people.addToken({ name: 'wall', rights: ['look'], days: 9 }, caller, station);
    if (!link.ok || !token.ok) throw new Error('not added');
    const secrets = [first, secret, caller.csrf ?? '', link.value.link.slice(8), token.value.secret, goodPassword];
    close(people);
    const bytes = readFileSync(path, 'latin1');
    expect(bytes).toContain('$argon2id$');
    for (const one of secrets) {
      expect(one.length).toBeGreaterThan(11);
      expect(bytes).not.toContain(one);
      expect(JSON.stringify(audit.entries)).not.toContain(one);
    }
  });

  test('makes a hash anew at a sign-in once hashes cost more, and not else', async () => {
    const first = open();
    await firstAdmin(first);
    close(first);
    const hash = (): string => {
      const database = new Database(path);
      const [kept] = database.prepare('SELECT password_hash FROM person').raw().get() as [string];
      database.close();
      return kept;
    };
    const cheap = hash();
    for (const [cost, dearer] of [
      [cheapHashes, false],
      [{ ...cheapHashes, memoryKib: 64 }, true],
    ] as const) {
      const people = open(cost as typeof cheapHashes);
      expect(await people.signIn({ name: 'Ada', password: goodPassword }, station)).toMatchObject({ ok: true });
      close(people);
      expect(hash() !== cheap).toBe(dearer);
    }
    expect(hash()).toContain('m=64,');
    expect(await open().signIn({ name: 'Ada', password: goodPassword }, station)).toMatchObject({ ok: true });
  });

  test('that is no database, or damaged within, starts no program and stays as it is', async () => {
    const people = open();
    await firstAdmin(people);
    close(people);
    const whole = readFileSync(path);
    const torn = Buffer.from(whole).fill(0xa5, 4096 + 8, 8192);
    for (const bytes of [Buffer.from('no database at all'.repeat(99)), torn]) {
      writeFileSync(path, bytes);
      expect(() => open()).toThrow(expect.objectContaining({ code: 'PEOPLE_DAMAGED' }));
      expect(readFileSync(path)).toEqual(bytes);
    }
  });

  test('of a newer program is refused, and stays as it is', async () => {
    const people = open();
    await firstAdmin(people);
    close(people);
    inFile(`PRAGMA user_version = ${peopleSchemaVersion + 1}`);
    const bytes = readFileSync(path);
    expect(() => open()).toThrow(expect.objectContaining({ code: 'PEOPLE_SCHEMA_NEWER' }));
    expect(readFileSync(path)).toEqual(bytes);
  });

  test('that can not be opened says so', () => {
    path = join(folder.path, 'nowhere', 'people.db');
    expect(() => open()).toThrow(expect.objectContaining({ code: 'PEOPLE_OPEN_FAILED' }));
  });
});

describe('a disk that refuses', () => {
  // A trigger of the file refuses as a full disk does: in the middle of the transaction, from whatever connection it comes.
  const triggers = ['session', 'person', 'token'].flatMap((table) =>
    ['INSERT', 'UPDATE', 'DELETE'].map((what) => ({ name: `full_${table}_${what}`, on: `${what} ON ${table}` })),
  );
  const refusing = triggers.map(
    ({ name, on }) => `CREATE TRIGGER ${name} BEFORE ${on} BEGIN SELECT RAISE(ABORT, 'disk full'); END;`,
  );
  const taking = triggers.map(({ name }) => `DROP TRIGGER ${name};`);

  test('lets nobody in and changes nothing, while who is signed in looks on', async () => {
    const people = open();
    const { secret, caller } = await firstAdmin(people);
    inFile(refusing.join('\n'));
    const unavailable = { fault: { code: 'PEOPLE_UNAVAILABLE' } };
    const before = audit.entries.length;
    expect(await people.signIn({ name: 'Ada', password: goodPassword }, station)).toMatchObject(unavailable);
    expect(await people.addPerson({ name: 'Ines', role: 'viewer' }, caller, station)).toMatchObject(unavailable);
    expect(people.people().map(({ name }) => name)).toEqual(['Ada']);
    expect(audit.entries).toHaveLength(before);
    clock.advance(60_000);
    expect(people.sessionOf(secret, true)).not.toBeNull();
    people.tend();
    expect(people.trouble()).toContain('disk full');
    expect(faults.length).toBeGreaterThan(2);

    inFile(taking.join('\n'));
    expect(await people.signIn({ name: 'Ada', password: goodPassword }, station)).toMatchObject({ ok: true });
    expect(people.trouble()).toBeNull();
  });

  test('ends a session all the same when its person signs out', async () => {
    const people = open();
    const { secret, caller } = await firstAdmin(people);
    inFile(refusing.join('\n'));
    expect(await people.endSession(caller, false, station)).toMatchObject({ fault: { code: 'PEOPLE_UNAVAILABLE' } });
    expect(people.sessionOf(secret, false)).toBeNull();
    inFile(taking.join('\n'));
    people.tend();
    close(people);
    expect(open().sessionOf(secret, false)).toBeNull();
  });
});

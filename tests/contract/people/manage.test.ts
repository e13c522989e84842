import { describe, expect, test } from 'vitest';
import { ManualClock } from '@ebbline/shared/clock/manual-clock';
import type { Caller } from '../../../backend/src/ports/people';
import { firstAdmin, goodPassword, ListedAudit, peopleInMemory, station } from '../../helpers/people-in-memory';

const startMs = Date.UTC(2026, 0, 5, 6);
const dayMs = 86_400_000;
const newPassword = 'nine other willows, no kettle';

async function withAda(): Promise<{
  people: ReturnType<typeof peopleInMemory>;
  clock: ManualClock;
  audit: ListedAudit;
  ada: Caller;
}> {
  const [clock, audit] = [new ManualClock(startMs), new ListedAudit()];
  const people = peopleInMemory({ clock, audit });
  return { people, clock, audit, ada: (await firstAdmin(people)).caller };
}

const codeOf = async (answer: Promise<{ ok: boolean; fault?: { code: string } }>): Promise<string> =>
  (await answer).fault?.code ?? 'ok';
const secretIn = (link: string): string => link.replace(/^\/set-up#/, '');

async function added(people: ReturnType<typeof peopleInMemory>, ada: Caller, name: string, role: 'operator' | 'admin') {
  const made = await people.addPerson({ name, role }, ada, station);
  if (!made.ok) throw new Error(made.fault.message);
  const begun = await people.setUp({ link: secretIn(made.value.link), password: goodPassword }, station);
  if (!begun.ok) throw new Error(begun.fault.message);
  return { id: made.value.person.id, begun: begun.value, link: secretIn(made.value.link) };
}

describe('a person', () => {
  test('is added with a link that is good once and for a day', async () => {
    const { people, clock, ada } = await withAda();
    const made = await people.addPerson({ name: 'Ines', role: 'operator' }, ada, station);
    if (!made.ok) throw new Error(made.fault.message);
    expect(made.value).toMatchObject({ person: { name: 'Ines', waiting: true, enabled: true, by: 'password' } });
    expect(Date.parse(made.value.endsAt)).toBe(startMs + dayMs);
    expect(await codeOf(people.signIn({ name: 'Ines', password: goodPassword }, station))).toBe('SIGN_IN_REFUSED');
    clock.advance(dayMs);
    const late = { link: secretIn(made.value.link), password: goodPassword };
    expect(await codeOf(people.setUp(late, station))).toBe('SET_UP_LINK_UNKNOWN');
  });

  test('sets a password by the link, which two can not use, at once or later', async () => {
    const { people, ada } = await withAda();
    const made = await people.addPerson({ name: 'Ines', role: 'operator' }, ada, station);
    if (!made.ok) throw new Error(made.fault.message);
    const asked = { link: secretIn(made.value.link), password: goodPassword };
    expect(await codeOf(people.setUp({ ...asked, password: 'Password1234' }, station))).toBe('PASSWORD_COMMON');
    const both = await Promise.all([codeOf(people.setUp(asked, station)), codeOf(people.setUp(asked, station))]);
    expect(both.sort()).toEqual(['SET_UP_LINK_UNKNOWN', 'ok']);
    expect(await codeOf(people.setUp(asked, station))).toBe('SET_UP_LINK_UNKNOWN');
    expect(people.people()[1]).toMatchObject({ name: 'Ines', waiting: false });
  });

  test.for(['ada', ' ADA ', 'A\u200Bda', 'Ａｄａ'])('is not added under a name that is taken: %j', async (name) => {
    const { people, ada } = await withAda();
    expect(await codeOf(people.addPerson({ name, role: 'viewer' }, ada, station))).toBe('PERSON_NAME_TAKEN');
  });

  test('loses all sessions and the link when disabled, and may come in again when enabled', async () => {
    const { people, ada, audit } = await withAda();
    const { id, begun } = await added(people, ada, 'Ines', 'operator');
    await people.changePerson(id, { enabled: false, reason: 'left' }, ada, station);
    expect(people.sessionOf(begun.secret, false)).toBeNull();
    expect(await codeOf(people.signIn({ name: 'Ines', password: goodPassword }, station))).toBe('SIGN_IN_REFUSED');
    expect(audit.entries.at(-2)).toEqual({
      ...{ cause: 'personChanged', actor: 'Ada', station, reason: 'Ines, disabled: left' },
    });
    await people.changePerson(id, { enabled: true, reason: 'back' }, ada, station);
    expect(await codeOf(people.signIn({ name: 'Ines', password: goodPassword }, station))).toBe('ok');
  });

  test('has the rights of a new role at once, and what was open before is no longer in force', async () => {
    const { people, ada } = await withAda();
    const { id, begun } = await added(people, ada, 'Ines', 'operator');
    await people.changePerson(id, { role: 'viewer', reason: 'moved' }, ada, station);
    expect(people.isInForce(begun.caller)).toBe(false);
    expect(people.sessionOf(begun.secret, false)?.rights).toEqual(['look']);
  });

  test('gets a new link, with which the old password and all sessions end', async () => {
    const { people, ada } = await withAda();
    const { id, begun } = await added(people, ada, 'Ines', 'operator');
    const made = await people.linkFor(id, 'forgot', ada, station);
    if (!made.ok) throw new Error(made.fault.message);
    expect(people.sessionOf(begun.secret, false)).toBeNull();
    expect(await codeOf(people.signIn({ name: 'Ines', password: goodPassword }, station))).toBe('SIGN_IN_REFUSED');
    expect(await codeOf(people.setUp({ link: secretIn(made.value.link), password: newPassword }, station))).toBe('ok');
  });

  test('changes the password by the old one; every session but the new one ends', async () => {
    const { people, ada } = await withAda();
    const { begun } = await added(people, ada, 'Ines', 'operator');
    const change = (old: string, password: string) => people.changePassword(begun.caller, { old, password }, station);
    expect(await codeOf(change('not this one', newPassword))).toBe('SIGN_IN_REFUSED');
    expect(await codeOf(change(goodPassword, 'Ines12345678'))).toBe('PASSWORD_COMMON');
    const changed = await change(goodPassword, newPassword);
    if (!changed.ok) throw new Error(changed.fault.message);
    expect(people.sessionOf(begun.secret, false)).toBeNull();
    expect(people.sessionOf(changed.value.secret, false)?.name).toBe('Ines');
    expect(await codeOf(people.signIn({ name: 'Ines', password: newPassword }, station))).toBe('ok');
  });
});

describe('the last admin', () => {
  test('can be neither demoted nor disabled nor sent a link, until another can sign in', async () => {
    const { people, ada } = await withAda();
    const id = people.people()[0]?.id ?? '';
    const tries = () =>
      Promise.all([
        codeOf(people.changePerson(id, { role: 'engineer', reason: 'x' }, ada, station)),
        codeOf(people.changePerson(id, { enabled: false, reason: 'x' }, ada, station)),
        codeOf(people.linkFor(id, 'x', ada, station)),
      ]);
    const last = Array.from({ length: 3 }, () => 'PERSON_LAST_ADMIN');
    expect(await tries()).toEqual(last);
    // Who has not set a password yet is no other admin.
    await people.addPerson({ name: 'Waiting', role: 'admin' }, ada, station);
    expect(await tries()).toEqual(last);
    await added(people, ada, 'Ines', 'admin');
    expect(await codeOf(people.changePerson(id, { role: 'engineer', reason: 'x' }, ada, station))).toBe('ok');
    expect(people.setUpNeeded()).toBe(false);
  });
});

describe('a token', () => {
  const wall = { name: 'wall display', rights: ['look'], days: 2 } satisfies Parameters<
    ReturnType<typeof peopleInMemory>['addToken']
  >[0];

  test('lets a machine in with its rights, until its end', async () => {
    const { people, clock, ada } = await withAda();
    const made = await people.addToken(wall, ada, station);
    if (!made.ok) throw new Error(made.fault.message);
    const caller = people.tokenOf(made.value.secret);
    expect(caller).toMatchObject({ name: 'wall display', rights: ['look'], role: null, by: 'token', csrf: null });
    expect(people.tokens()[0]).toMatchObject({ addedBy: 'Ada', lastUsedAt: new Date(startMs).toISOString() });
    expect(people.sessionOf(made.value.secret, false)).toBeNull();
    expect(people.tokenOf(`${made.value.secret}x`)).toBeNull();
    clock.advance(2 * dayMs - 1);
    expect(people.tokenOf(made.value.secret)).not.toBeNull();
    clock.advance(1);
    expect(people.tokenOf(made.value.secret)).toBeNull();
    if (caller !== null) expect(people.isInForce(caller)).toBe(false);
  });

  test('is withdrawn once, and at once', async () => {
    const { people, ada, audit } = await withAda();
    const made = await people.addToken(wall, ada, station);
    if (!made.ok) throw new Error(made.fault.message);
    const { id } = made.value.token;
    expect(await codeOf(people.withdrawToken(id, 'lost', ada, station))).toBe('ok');
    expect(people.tokenOf(made.value.secret)).toBeNull();
    expect(await codeOf(people.withdrawToken(id, 'lost', ada, station))).toBe('TOKEN_UNKNOWN');
    expect(audit.entries.slice(-2).map(({ cause, actor }) => [cause, actor])).toEqual([
      ['tokenAdded', 'Ada'],
      ['tokenWithdrawn', 'Ada'],
    ]);
    expect(JSON.stringify(audit.entries)).not.toContain(made.value.secret);
  });

  test('has no name of a person, nor a person that of a token', async () => {
    const { people, ada } = await withAda();
    expect(await codeOf(people.addToken({ ...wall, name: 'ada' }, ada, station))).toBe('PERSON_NAME_TAKEN');
    await people.addToken(wall, ada, station);
    const named = people.addPerson({ name: 'Wall Display', role: 'viewer' }, ada, station);
    expect(await codeOf(named)).toBe('PERSON_NAME_TAKEN');
  });
});

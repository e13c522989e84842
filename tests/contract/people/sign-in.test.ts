import { describe, expect, test } from 'vitest';
import { ManualClock } from '@ebbline/shared/clock/manual-clock';
import { firstAdmin, goodPassword, ListedAudit, peopleInMemory, station } from '../../helpers/people-in-memory';

const startMs = Date.UTC(2026, 0, 5, 6);
const right = { name: 'Ada', password: goodPassword };
const wrong = { name: 'Ada', password: 'not this one at all' };

async function withAda(): Promise<{
  people: ReturnType<typeof peopleInMemory>;
  clock: ManualClock;
  audit: ListedAudit;
}> {
  const [clock, audit] = [new ManualClock(startMs), new ListedAudit()];
  const people = peopleInMemory({ clock, audit });
  await firstAdmin(people);
  return { people, clock, audit };
}

describe('a sign-in', () => {
  test('is refused alike for a wrong password and for a name that is nobody’s', async () => {
    const { people } = await withAda();
    const known = await people.signIn(wrong, station);
    const unknown = await people.signIn({ ...wrong, name: 'Eve' }, station);
    expect(known).toEqual(unknown);
    expect(known).toMatchObject({ fault: { code: 'SIGN_IN_REFUSED' } });
  });

  test.for(['Ada', 'Eve'])(
    'waits under the name %s after five failures from anywhere, right or wrong',
    async (name) => {
      const { people, clock, audit } = await withAda();
      for (let i = 0; i < 5; i++) {
        const answer = await people.signIn({ name, password: `wrong ${i}` }, `10.0.0.${i}`);
        expect(answer).toMatchObject({ fault: { code: 'SIGN_IN_REFUSED' } });
      }
      const held = { fault: { code: 'SIGN_IN_LATER', retryAfterSeconds: 30 } };
      expect(await people.signIn({ name, password: goodPassword }, '10.0.0.9')).toMatchObject(held);
      clock.advance(29_999);
      expect(await people.signIn({ name, password: goodPassword }, '10.0.0.9')).toMatchObject({
        fault: { retryAfterSeconds: 1 },
      });
      clock.advance(1);
      const after = await people.signIn({ name, password: goodPassword }, '10.0.0.9');
      expect(after.ok).toBe(name === 'Ada');
      expect(audit.causes().filter((cause) => cause === 'signInLockedOut').length).toBeGreaterThan(0);
    },
  );

  test('waits from a station after five failures under any names, and not from another', async () => {
    const { people } = await withAda();
    for (let i = 0; i < 5; i++) await people.signIn({ name: `nobody ${i}`, password: 'wrong' }, '10.0.0.1');
    expect(await people.signIn(right, '10.0.0.1')).toMatchObject({ fault: { code: 'SIGN_IN_LATER' } });
    expect(await people.signIn(right, '10.0.0.2')).toMatchObject({ ok: true });
  });

  test('between guesses at other names does not wipe out what failed from the station', async () => {
    const { people } = await withAda();
    for (let i = 0; i < 4; i++) await people.signIn({ name: `nobody ${i}`, password: 'wrong' }, '10.0.0.1');
    expect(await people.signIn(right, '10.0.0.1')).toMatchObject({ ok: true });
    await people.signIn({ name: 'nobody 4', password: 'wrong' }, '10.0.0.1');
    expect(await people.signIn(right, '10.0.0.1')).toMatchObject({ fault: { code: 'SIGN_IN_LATER' } });
  });

  test('forgives the station what its own name had failed', async () => {
    const { people } = await withAda();
    for (let day = 0; day < 5; day++) {
      for (let i = 0; i < 3; i++) await people.signIn(wrong, '10.0.0.1');
      expect(await people.signIn(right, '10.0.0.1')).toMatchObject({ ok: true });
    }
  });

  test('waits for the whole network of an IPv6 station, as whoever has one address of it has all', async () => {
    const { people } = await withAda();
    for (let i = 0; i < 5; i++) await people.signIn({ name: `nobody ${i}`, password: 'wrong' }, `2001:db8::${i + 1}`);
    expect(await people.signIn(right, '2001:db8::ff')).toMatchObject({ fault: { code: 'SIGN_IN_LATER' } });
    expect(await people.signIn(right, '2001:db8:0:1::1')).toMatchObject({ ok: true });
  });

  test('is judged five times at most where a hundred come at once', async () => {
    const { people, audit } = await withAda();
    const answers = await Promise.all(Array.from({ length: 100 }, (_, i) => people.signIn(wrong, `10.0.1.${i}`)));
    const codes = answers.map((answer) => (answer.ok ? 'ok' : answer.fault.code));
    expect(codes.filter((code) => code === 'SIGN_IN_REFUSED')).toHaveLength(5);
    expect(codes.filter((code) => code === 'SIGN_IN_LATER')).toHaveLength(95);
    expect(audit.causes().filter((cause) => cause === 'signedIn')).toHaveLength(0);
  });

  test('names nobody and no password in the record of a name that is nobody’s', async () => {
    const { people, audit } = await withAda();
    await people.signIn({ name: 'kettle under nine willows', password: 'x' }, station);
    expect(JSON.stringify(audit.entries.slice(1))).not.toMatch(/kettle|willow/);
    expect(audit.entries.at(-1)).toMatchObject({ cause: 'signInRefused', actor: null, station });
  });

  test('does not take place where the journal refuses the record, while who is in looks on', async () => {
    const { people, audit } = await withAda();
    const begun = await people.signIn(right, station);
    audit.refuses = true;
    expect(await people.signIn(right, station)).toMatchObject({ fault: { code: 'JOURNAL_UNAVAILABLE' } });
    if (!begun.ok) throw new Error(begun.fault.message);
    expect(people.sessionOf(begun.value.secret, true)?.name).toBe('Ada');
    expect(await people.endSession(begun.value.caller, false, station)).toMatchObject({ ok: false });
    expect(people.sessionOf(begun.value.secret, false)).toBeNull();
  });
});

describe('a session', () => {
  test('ends by idling, which only acts push back, and at the latest after its time', async () => {
    const { people, clock } = await withAda();
    const begun = await people.signIn(right, station);
    if (!begun.ok) throw new Error(begun.fault.message);
    const { secret } = begun.value;
    for (let hour = 0; hour < 12; hour++) {
      clock.advance(3_599_000);
      const caller = people.sessionOf(secret, true);
      expect(caller?.idleEndsMs).toBe(clock.wallMs() + 3_600_000);
    }
    clock.advance(3_600_000);
    expect(people.sessionOf(secret, true)).toBeNull();

    const looked = await people.signIn(right, station);
    if (!looked.ok) throw new Error(looked.fault.message);
    clock.advance(3_599_999);
    expect(people.sessionOf(looked.value.secret, false)).not.toBeNull();
    clock.advance(1);
    expect(people.sessionOf(looked.value.secret, true)).toBeNull();
    expect(people.isInForce(looked.value.caller)).toBe(false);
  });

  test('that is over is taken away once a minute, with a record', async () => {
    const { people, clock, audit } = await withAda();
    clock.advance(3_600_000);
    people.tend();
    people.tend();
    expect(audit.entries.filter(({ cause }) => cause === 'sessionEnded')).toEqual([
      { cause: 'sessionEnded', actor: null, station, reason: 'session of Ada ended, nobody acted' },
    ]);
  });

  test('has a secret of 256 bits, and a word against foreign pages that is made from it and is not it', async () => {
    const { people } = await withAda();
    const [one, other] = [await people.signIn(right, station), await people.signIn(right, station)];
    if (!one.ok || !other.ok) throw new Error('no sign-in');
    expect(one.value.secret).toMatch(/^[\w-]{43}$/);
    expect(one.value.secret).not.toBe(other.value.secret);
    expect(one.value.caller.csrf).toMatch(/^[\w-]{43}$/);
    expect(new Set([one.value.caller.csrf, other.value.caller.csrf, one.value.secret]).size).toBe(3);
  });

  test('gives way to a newer one of the same person after twenty, the one that is quiet for longest first', async () => {
    const { people, clock } = await withAda();
    const secrets: string[] = [];
    for (let i = 0; i < 21; i++) {
      clock.advance(1000);
      const begun = await people.signIn(right, station);
      if (begun.ok) secrets.push(begun.value.secret);
    }
    expect(secrets.map((secret) => people.sessionOf(secret, false) !== null)).toEqual([
      false,
      ...Array.from({ length: 20 }, () => true),
    ]);
  });

  test('ends everywhere where its person says so', async () => {
    const { people } = await withAda();
    const [one, other] = [await people.signIn(right, station), await people.signIn(right, station)];
    if (!one.ok || !other.ok) throw new Error('no sign-in');
    await people.endSession(one.value.caller, true, station);
    expect([one, other].map(({ value }) => people.sessionOf(value.secret, false))).toEqual([null, null]);
  });
});

describe('one click on the demo site', () => {
  test('signs an engineer in under a name that is nobody’s', async () => {
    const people = peopleInMemory({ demo: true });
    await firstAdmin(people);
    expect(await people.signInDemo(' Ines ', station)).toMatchObject({
      value: { caller: { name: 'Ines', role: 'engineer', by: 'demo' } },
    });
    expect(await people.signInDemo('ADA', station)).toMatchObject({ fault: { code: 'PERSON_NAME_TAKEN' } });
    expect(await people.signInDemo('\u200B', station)).toMatchObject({ fault: { code: 'PERSON_NAME_MISSING' } });
  });

  test('signs nobody in on any other site', async () => {
    const { people } = await withAda();
    expect(await people.signInDemo('Ines', station)).toMatchObject({ fault: { code: 'DEMO_SIGN_IN_ABSENT' } });
  });
});

describe('an identity provider', () => {
  const ines = { issuer: 'https://id.test', subject: 'a1', name: 'Ines', role: 'operator' } as const;

  test('vouches for a person by subject: a new role counts, a new name does not', async () => {
    const { people } = await withAda();
    expect(await people.signInForeign(ines, station)).toMatchObject({
      value: { caller: { role: 'operator', by: 'openId' } },
    });
    expect(await people.signInForeign({ ...ines, name: 'Eve', role: 'viewer' }, station)).toMatchObject({
      value: { caller: { name: 'Ines', role: 'viewer' } },
    });
    expect(await people.signInForeign({ ...ines, subject: 'b2' }, station)).toMatchObject({
      fault: { code: 'PERSON_NAME_TAKEN' },
    });
    expect(await people.signIn({ name: 'Ines', password: goodPassword }, station)).toMatchObject({ ok: false });
  });

  test('lets nobody in whom an admin disabled', async () => {
    const { people } = await withAda();
    const admin = await people.signIn(right, station);
    const begun = await people.signInForeign(ines, station);
    if (!admin.ok || !begun.ok) throw new Error('no sign-in');
    const { id } = people.people()[1] ?? { id: '' };
    await people.changePerson(id, { enabled: false, reason: 'left' }, admin.value.caller, station);
    expect(people.isInForce(begun.value.caller)).toBe(false);
    expect(await people.signInForeign(ines, station)).toMatchObject({ fault: { code: 'SIGN_IN_REFUSED' } });
    const role = await people.changePerson(id, { role: 'admin', reason: 'x' }, admin.value.caller, station);
    expect(role).toMatchObject({ fault: { code: 'PERSON_FOREIGN' } });
    expect(await people.linkFor(id, 'x', admin.value.caller, station)).toMatchObject({
      fault: { code: 'PERSON_FOREIGN' },
    });
  });
});

import { describe, expect, test } from 'vitest';
import { firstAdmin, goodPassword, peopleInMemory, station } from '../../helpers/people-in-memory';

describe('people', () => {
  test('need a first admin, whom the link of the start lets set a password once', async () => {
    const people = peopleInMemory();
    const link = people.firstLink() ?? '';
    expect(people.setUpNeeded()).toBe(true);
    const begun = await firstAdmin(people);
    expect(begun.caller).toMatchObject({ name: 'Ada', role: 'admin', by: 'password' });
    expect(people.setUpNeeded()).toBe(false);
    expect(people.firstLink()).toBeNull();
    expect(await people.setUp({ link, name: 'Eve', password: goodPassword }, station)).toMatchObject({
      fault: { code: 'SET_UP_LINK_UNKNOWN' },
    });
  });

  test('sign in by name and password, in any case of letters, and are known by the secret of their session', async () => {
    const people = peopleInMemory();
    await firstAdmin(people);
    const begun = await people.signIn({ name: ' aDa', password: goodPassword }, station);
    if (!begun.ok) throw new Error(begun.fault.message);
    expect(people.sessionOf(begun.value.secret, false)).toEqual(begun.value.caller);
    expect(people.isInForce(begun.value.caller)).toBe(true);
    expect(await people.endSession(begun.value.caller, false, station)).toEqual({ ok: true, value: null });
    expect(people.sessionOf(begun.value.secret, false)).toBeNull();
    expect(people.isInForce(begun.value.caller)).toBe(false);
  });
});

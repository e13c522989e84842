import { describe, expect, test } from 'vitest';
import { firstAdmin, peopleInMemory, station } from '../../helpers/people-in-memory';

type People = ReturnType<typeof peopleInMemory>;

const asAdmin = (people: People): Promise<unknown> => firstAdmin(people, 'Ada');
const byProvider = (people: People): Promise<unknown> =>
  people.signInForeign({ issuer: 'https://id.example', subject: '7', name: 'Ada', role: 'operator' }, station);

describe('a session of one click', () => {
  test.for([
    ['the first admin’s', asAdmin],
    ['that of someone from an identity provider', byProvider],
  ] as const)('ends when its name becomes %s, and no other does', async ([, become]) => {
    const people = peopleInMemory({ demo: true });
    const [begun, other] = [await people.signInDemo(' aDa', station), await people.signInDemo('Ines', station)];
    if (!begun.ok || !other.ok) throw new Error('not signed in');
    expect(people.sessionOf(begun.value.secret, true)).not.toBeNull();
    await become(people);
    expect(people.sessionOf(begun.value.secret, true)).toBeNull();
    expect(people.isInForce(begun.value.caller)).toBe(false);
    expect(people.sessionOf(other.value.secret, true)).not.toBeNull();
    expect((await people.signInDemo('ada', station)).ok).toBe(false);
  });
});

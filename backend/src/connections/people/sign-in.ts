import { nameKey, shownName } from '../../access/name-key';
import { networkOf } from '../../access/network-of';
import { backOffRules } from '../../access/sign-in-back-off';
import type { SignInRequest } from '@ebbline/shared/contract/people';
import type { BegunSession } from '../../ports/people';
import { beginSession } from './begin-session';
import { tooMany } from './hashing';
import type { Answer, PeopleDesk } from './people-desk';
import { later, refused } from './people-fault';
import { isTaken, personByKey } from './people-list';
import type { StoredPerson } from './stored';

/** What is remembered of failures: under this name, and from this station. */
const keysOf = (name: string, station: string): readonly [string, string] => [
  `name ${nameKey(name)}`,
  `station ${networkOf(station)}`,
];

/**
 * Judges a password under a name, slowed down by what failed before. As much is reckoned, and the same is answered, whether or not
 * there is such a name; in the waiting time nothing is reckoned at all.
 */
export async function judged(
  desk: PeopleDesk,
  { name, password }: SignInRequest,
  station: string,
): Promise<Answer<StoredPerson>> {
  const keys = keysOf(name, station);
  const person = personByKey(desk.book, nameKey(name));
  const whose = person === null ? 'under a name that is nobody’s' : `under the name ${person.name}`;
  const write = (cause: 'signInRefused' | 'signInLockedOut', reason: string): void =>
    void desk.audit.write({ cause, actor: null, station, reason: `${reason} ${whose}` });
  const waitMs = desk.backOff.waitMs(keys, desk.clock.monotonicMs());
  if (waitMs > 0) {
    write('signInRefused', 'sign-in refused while it has to wait');
    return later(waitMs);
  }
  const kept = person?.enabled === true ? person.passwordHash : null;
  const isRight = await noted(desk, keys, () => desk.hashing.check(kept, password));
  if (isRight === tooMany) return later(busyMs);
  const now = person === null ? undefined : desk.book.people.get(person.id);
  if (isRight && now?.enabled === true && now.passwordHash === kept) return { ok: true, value: now };
  write('signInRefused', 'sign-in refused');
  const nextMs = desk.backOff.waitMs(keys, desk.clock.monotonicMs());
  if (nextMs >= backOffRules.firstWaitMs)
    write('signInLockedOut', `no sign-in for ${Math.ceil(nextMs / 1000)} s after too many failures`);
  return refused('SIGN_IN_REFUSED');
}

/** When to come again while too many wait, ms. */
export const busyMs = 2000;

async function noted(
  { backOff, clock }: PeopleDesk,
  keys: readonly [string, string],
  judge: () => Promise<boolean | typeof tooMany>,
): Promise<boolean | typeof tooMany> {
  let event: 'abandon' | 'succeed' | 'fail' = 'abandon';
  backOff.note(keys, 'begin', clock.monotonicMs());
  try {
    const isRight = await judge();
    if (isRight !== tooMany) event = isRight ? 'succeed' : 'fail';
    return isRight;
  } finally {
    if (event === 'succeed') backOff.succeed(...keys, clock.monotonicMs());
    else backOff.note(keys, event, clock.monotonicMs());
  }
}

/** Signs in by password; a hash that costs less than today's is made anew. */
export async function signIn(desk: PeopleDesk, asked: SignInRequest, station: string): Promise<Answer<BegunSession>> {
  const answer = await judged(desk, asked, station);
  if (!answer.ok) return answer;
  const { hashing, clock, book } = desk;
  const outgrown = answer.value.passwordHash !== null && hashing.isOutgrown(answer.value.passwordHash);
  const anew = outgrown ? await hashing.hash(asked.password) : tooMany;
  const person = book.people.get(answer.value.id);
  if (person?.enabled !== true || person.passwordHash !== answer.value.passwordHash) return refused('SIGN_IN_REFUSED');
  const passwordHash = anew === tooMany ? person.passwordHash : anew;
  const row = { ...person, passwordHash, lastSignInMs: Math.round(clock.wallMs()) };
  const entry = { cause: 'signedIn', actor: person.name, station, reason: 'signed in by password' } as const;
  return beginSession(desk, { personId: person.id, name: person.name }, station, entry, [{ put: 'person', row }]);
}

/** One click under a name, on the demo site. */
export function signInDemo(desk: PeopleDesk, typed: string, station: string): Answer<BegunSession> {
  const name = shownName(typed);
  if (!desk.demo) return refused('DEMO_SIGN_IN_ABSENT');
  if (name === '') return refused('PERSON_NAME_MISSING');
  if (isTaken(desk.book, name, desk.clock.wallMs())) return refused('PERSON_NAME_TAKEN');
  const entry = { cause: 'signedIn', actor: name, station, reason: 'signed in by one click on the demo site' } as const;
  return beginSession(desk, { personId: null, name }, station, entry);
}

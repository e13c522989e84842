import { nameKey } from '../../access/name-key';
import type { PersonRow, TokenRow } from '@ebbline/shared/contract/people';
import type { PeopleBook } from './people-book';
import type { Change, StoredPerson, StoredToken } from './stored';

const iso = (ms: number): string => new Date(ms).toISOString();
const isoOrNull = (ms: number | null): string | null => (ms === null ? null : iso(ms));

/** Has not set a password yet by the link. */
export const isWaiting = ({ issuer, passwordHash }: StoredPerson): boolean => issuer === null && passwordHash === null;

export const personRow = (person: StoredPerson): PersonRow => ({
  id: person.id,
  name: person.name,
  role: person.role,
  enabled: person.enabled,
  by: person.issuer === null ? 'password' : 'openId',
  waiting: isWaiting(person),
  addedAt: iso(person.addedMs),
  lastSignInAt: isoOrNull(person.lastSignInMs),
});

export const tokenRow = (token: StoredToken): TokenRow => ({
  id: token.id,
  name: token.name,
  rights: [...token.rights],
  addedBy: token.addedBy,
  addedAt: iso(token.addedMs),
  endsAt: iso(token.endsMs),
  lastUsedAt: isoOrNull(token.lastUsedMs),
  withdrawnAt: isoOrNull(token.withdrawnMs),
});

export function personByKey(book: PeopleBook, key: string): StoredPerson | null {
  for (const person of book.people.values()) if (person.key === key) return person;
  return null;
}

/** Whether a name is a person's or that of a token in force: what is done under it must be one's alone. */
export function isTaken(book: PeopleBook, name: string, nowMs: number): boolean {
  const key = nameKey(name);
  const ofToken = [...book.tokens.values()].some(
    (token) => token.key === key && token.withdrawnMs === null && nowMs < token.endsMs,
  );
  return ofToken || personByKey(book, key) !== null;
}

const isAdmin = ({ role, enabled }: StoredPerson): boolean => role === 'admin' && enabled;

/** Until there is one, waiting or not, the first is set up by the link of the start. */
export const hasAdmin = (book: PeopleBook): boolean => [...book.people.values()].some(isAdmin);

/** Whether no other admin could sign in. In place of one with a password only such a one counts: a provider may take its word back. */
export const isLastAdmin = (book: PeopleBook, person: StoredPerson): boolean => {
  const counts = (other: StoredPerson): boolean =>
    isAdmin(other) && !isWaiting(other) && (other.passwordHash !== null || person.passwordHash === null);
  return counts(person) && ![...book.people.values()].some((other) => other.id !== person.id && counts(other));
};

/** Ends all sessions of a person, but for one. */
export const endSessionsOf = (book: PeopleBook, personId: string, but: string | null = null): Change[] =>
  [...book.sessions.values()]
    .filter((session) => session.personId === personId && session.digest !== but)
    .map(({ digest }) => ({ drop: 'session', digest }));

export const dropLinksOf = (book: PeopleBook, personId: string): Change[] =>
  [...book.links.values()].filter((link) => link.personId === personId).map(({ digest }) => ({ drop: 'link', digest }));

/** Whoever took a name by one click may not go on under it once it is somebody's. */
export const demoSessionsUnder = (book: PeopleBook, name: string): Change[] =>
  [...book.sessions.values()]
    .filter((session) => session.personId === null && nameKey(session.name) === nameKey(name))
    .map(({ digest }) => ({ drop: 'session', digest }));

import { nameKey, shownName } from '../../access/name-key';
import type { BegunSession, ForeignIdentity } from '../../ports/people';
import { beginSession } from './begin-session';
import type { Answer, PeopleDesk } from './people-desk';
import { refused } from './people-fault';
import { demoSessionsUnder, isTaken } from './people-list';
import { newId } from './secret';
import type { StoredPerson } from './stored';

/**
 * Signs in whom an identity provider vouches for. Known by issuer and subject, which never change (OpenID Connect Core 1.0 section
 * 5.7); the name stays that of the first time, as it stands in the journal; the role is the provider's at each sign-in.
 */
export function signInForeign(desk: PeopleDesk, who: ForeignIdentity, station: string): Answer<BegunSession> {
  const { book, random, clock } = desk;
  const nowMs = Math.round(clock.wallMs());
  const known = [...book.people.values()].find(
    ({ issuer, subject }) => issuer === who.issuer && subject === who.subject,
  );
  const name = known?.name ?? shownName(who.name);
  if (name === '') return refused('PERSON_NAME_MISSING');
  if (known === undefined && isTaken(book, name, nowMs)) return refused('PERSON_NAME_TAKEN');
  if (known?.enabled === false) {
    desk.audit.write({ cause: 'signInRefused', actor: null, station, reason: `sign-in refused, ${name} is disabled` });
    return refused('SIGN_IN_REFUSED');
  }
  const row: StoredPerson = {
    ...(known ?? { id: newId(random), name, key: nameKey(name), enabled: true, addedMs: nowMs }),
    ...{ role: who.role, issuer: who.issuer, subject: who.subject, passwordHash: null, lastSignInMs: nowMs },
  };
  const reason = `signed in by an identity provider as ${who.role}`;
  const entry = { cause: 'signedIn', actor: name, station, reason } as const;
  return beginSession(desk, { personId: row.id, name }, station, entry, [
    { put: 'person', row },
    ...demoSessionsUnder(book, name),
  ]);
}

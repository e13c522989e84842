import { nameKey, shownName } from '../../access/name-key';
import { isCommonPassword } from './common-passwords';
import type { SetUpRequest } from '@ebbline/shared/contract/people';
import type { AuditCause } from '../../ports/audit';
import type { BegunSession } from '../../ports/people';
import { beginSession } from './begin-session';
import { tooMany } from './hashing';
import { linkInForce } from './link-in-force';
import type { Answer, PeopleDesk } from './people-desk';
import { later, refused } from './people-fault';
import { demoSessionsUnder, dropLinksOf, endSessionsOf, hasAdmin, isTaken } from './people-list';
import { digestOf, newId } from './secret';
import { busyMs } from './sign-in';
import type { Change, StoredPerson } from './stored';

/** Sets a password by a link that is good once: the first admin's, or one that an admin made. `first`: digest of the first admin's link; null once that was used. */
export async function setUp(
  desk: PeopleDesk,
  asked: SetUpRequest,
  first: string | null,
  station: string,
): Promise<Answer<BegunSession>> {
  const found = whoseLink(desk, asked, first);
  if (!found.ok) {
    if (found.fault.code === 'SET_UP_LINK_UNKNOWN')
      desk.audit.write({
        cause: 'signInRefused',
        actor: null,
        station,
        reason: 'set-up link refused: used, out of time or unknown',
      });
    return found;
  }
  if (isCommonPassword(asked.password, found.value.person.name)) return refused('PASSWORD_COMMON');
  const passwordHash = await desk.hashing.hash(asked.password);
  if (passwordHash === tooMany) return later(busyMs);
  // Whoever was faster with the same link, or the same name, has it.
  const still = whoseLink(desk, asked, first);
  if (!still.ok) return still;
  const { person, cause, said } = still.value;
  const row: StoredPerson = { ...person, passwordHash, lastSignInMs: Math.round(desk.clock.wallMs()) };
  const changes: Change[] = [
    { put: 'person', row },
    ...dropLinksOf(desk.book, row.id),
    ...endSessionsOf(desk.book, row.id),
    ...demoSessionsUnder(desk.book, row.name),
  ];
  const entry = { cause, actor: row.name, station, reason: said };
  return beginSession(desk, { personId: row.id, name: row.name }, station, entry, changes);
}

interface LinkHolder {
  readonly person: StoredPerson;
  readonly cause: AuditCause;
  readonly said: string;
}

function whoseLink(desk: PeopleDesk, { link, name }: SetUpRequest, first: string | null): Answer<LinkHolder> {
  const { book, clock } = desk;
  const digest = digestOf(link);
  if (digest === first && !hasAdmin(book)) return firstAdmin(desk, name ?? '');
  const kept = book.links.get(digest);
  const person = kept === undefined ? undefined : book.people.get(kept.personId);
  if (kept === undefined || !linkInForce(kept, clock.wallMs()) || person?.enabled !== true)
    return refused('SET_UP_LINK_UNKNOWN');
  return { ok: true, value: { person, cause: 'passwordSet', said: 'set a password by a link, and signed in' } };
}

function firstAdmin({ book, clock, random }: PeopleDesk, typed: string): Answer<LinkHolder> {
  const name = shownName(typed);
  const nowMs = Math.round(clock.wallMs());
  if (name === '') return refused('PERSON_NAME_MISSING');
  if (isTaken(book, name, nowMs)) return refused('PERSON_NAME_TAKEN');
  const person = newPerson(newId(random), name, 'admin', nowMs);
  return { ok: true, value: { person, cause: 'firstAdminSet', said: 'set up as the first admin, and signed in' } };
}

/** Someone who has not set a password yet. */
export const newPerson = (id: string, name: string, role: StoredPerson['role'], addedMs: number): StoredPerson => ({
  ...{ id, name, key: nameKey(name), role, enabled: true, issuer: null, subject: null, passwordHash: null },
  ...{ addedMs, lastSignInMs: null },
});

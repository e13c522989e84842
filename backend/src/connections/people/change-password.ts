import { isCommonPassword } from './common-passwords';
import type { ChangePasswordRequest } from '@ebbline/shared/contract/people';
import type { BegunSession, Caller } from '../../ports/people';
import { beginSession } from './begin-session';
import { sessionById } from './callers';
import { tooMany } from './hashing';
import type { Answer, PeopleDesk } from './people-desk';
import { later, refused } from './people-fault';
import { dropLinksOf, endSessionsOf } from './people-list';
import { busyMs, judged } from './sign-in';

/** A new password by who knows the old one, which is judged as at a sign-in. All sessions of this person end, and one begins. */
export async function changePassword(
  desk: PeopleDesk,
  caller: Caller,
  asked: ChangePasswordRequest,
  station: string,
): Promise<Answer<BegunSession>> {
  const id = caller.by === 'password' ? sessionById(desk, caller.id)?.personId : undefined;
  const person = typeof id === 'string' ? desk.book.people.get(id) : undefined;
  if (person === undefined) return refused('SIGN_IN_REFUSED');
  const answer = await judged(desk, { name: person.name, password: asked.old }, station);
  if (!answer.ok) return answer;
  if (isCommonPassword(asked.password, person.name)) return refused('PASSWORD_COMMON');
  const passwordHash = await desk.hashing.hash(asked.password);
  if (passwordHash === tooMany) return later(busyMs);
  const now = desk.book.people.get(person.id);
  if (now?.enabled !== true || now.passwordHash !== answer.value.passwordHash) return refused('SIGN_IN_REFUSED');
  const entry = {
    cause: 'passwordSet',
    actor: now.name,
    station,
    reason: 'set a new password; all sessions ended',
  } as const;
  return beginSession(desk, { personId: now.id, name: now.name }, station, entry, [
    { put: 'person', row: { ...now, passwordHash } },
    ...dropLinksOf(desk.book, now.id),
    ...endSessionsOf(desk.book, now.id),
  ]);
}

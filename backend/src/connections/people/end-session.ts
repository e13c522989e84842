import type { Caller } from '../../ports/people';
import { ok } from '@ebbline/shared/errors/result';
import { sessionById } from './callers';
import type { Answer, PeopleDesk } from './people-desk';
import { refused } from './people-fault';
import type { Change, StoredSession } from './stored';

/** Signs out, here or everywhere. The session is over at once, also where the disk then refuses the record. */
export function endSession(desk: PeopleDesk, caller: Caller, everywhere: boolean, station: string): Answer<null> {
  const { book } = desk;
  const session = sessionById(desk, caller.id);
  if (caller.by === 'token' || session === null) return ok(null);
  const isSame = (other: StoredSession): boolean =>
    everywhere ? other.personId === session.personId && other.name === session.name : other.id === session.id;
  const ended = [...book.sessions.values()].filter(isSame);
  const gone = ended.map(({ digest }): Change => ({ drop: 'session', digest }));
  for (const change of gone) book.remember(change);
  const reason = everywhere ? `signed out everywhere, ${gone.length} sessions` : 'signed out';
  const fault = book.commit(gone, { cause: 'signedOut', actor: caller.name, station, reason });
  if (fault === null) return ok(null);
  if (book.keep(gone) !== null) for (const { digest } of ended) book.owed.add(digest);
  return refused(fault);
}

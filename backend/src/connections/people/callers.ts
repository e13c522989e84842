import { isMadeAhead } from '../../access/made-ahead';
import { rightsOfRole } from '../../access/rights-of-role';
import { sessionEnds, sessionOver } from '../../access/session-times';
import type { Role } from '@ebbline/shared/contract/people';
import type { Caller } from '../../ports/people';
import type { PeopleDesk } from './people-desk';
import { csrfOf, digestOf } from './secret';
import type { StoredSession, StoredToken } from './stored';

/** Of whoever signs in by one click on the demo site: all that the demo shows, and nobody's people. */
const demoRole: Role = 'engineer';

/** Who a session is of, as that person stands now; null where they may not come in. */
function holderOf({ book, demo }: PeopleDesk, session: StoredSession): { role: Role; by: Caller['by'] } | null {
  if (session.personId === null) return demo ? { role: demoRole, by: 'demo' } : null;
  const person = book.people.get(session.personId);
  if (person?.enabled !== true) return null;
  return { role: person.role, by: person.issuer === null ? 'password' : 'openId' };
}

/** Why a session is no longer one at this time; null while it is in force. */
export function overBecause(desk: PeopleDesk, session: StoredSession): 'time' | 'idle' | 'ahead' | 'holder' | null {
  const holder = holderOf(desk, session);
  if (holder === null) return 'holder';
  return sessionOver(holder.role, session.begunMs, session.actedMs, desk.clock.wallMs(), holder.by === 'openId');
}

export function callerOfSession(desk: PeopleDesk, session: StoredSession, secret: string): Caller | null {
  const holder = holderOf(desk, session);
  if (holder === null || overBecause(desk, session) !== null) return null;
  return {
    name: session.name,
    role: holder.role,
    rights: rightsOfRole[holder.role],
    by: holder.by,
    id: session.id,
    csrf: csrfOf(secret),
    ...sessionEnds(holder.role, session.begunMs, session.actedMs, holder.by === 'openId'),
  };
}

/** @param acts a person did something just now */
export function sessionOf(desk: PeopleDesk, secret: string, acts: boolean): Caller | null {
  const session = desk.book.sessions.get(digestOf(secret));
  if (session === undefined || overBecause(desk, session) !== null) return null;
  const nowMs = Math.round(desk.clock.wallMs());
  const acted = acts && nowMs > session.actedMs ? { ...session, actedMs: nowMs } : session;
  if (acted !== session) desk.book.remember({ put: 'session', row: acted });
  return callerOfSession(desk, acted, secret);
}

const tokenInForce = ({ withdrawnMs, addedMs, endsMs }: StoredToken, nowMs: number): boolean =>
  withdrawnMs === null && nowMs < endsMs && !isMadeAhead(addedMs, nowMs);

export function tokenOf(desk: PeopleDesk, secret: string): Caller | null {
  const nowMs = Math.round(desk.clock.wallMs());
  const token = desk.book.tokens.get(digestOf(secret));
  if (token === undefined || !tokenInForce(token, nowMs)) return null;
  desk.book.remember({ put: 'token', row: { ...token, lastUsedMs: nowMs } });
  const { name, rights, id, endsMs } = token;
  return { name, role: null, rights, by: 'token', id, csrf: null, endsMs, idleEndsMs: null };
}

/** Whether what a caller was let in by still holds, with the same role. */
export function isInForce(desk: PeopleDesk, caller: Caller): boolean {
  if (caller.by === 'token') {
    const token = tokenById(desk, caller.id);
    return token !== null && tokenInForce(token, desk.clock.wallMs());
  }
  const session = sessionById(desk, caller.id);
  return session !== null && overBecause(desk, session) === null && holderOf(desk, session)?.role === caller.role;
}

export function sessionById({ book }: PeopleDesk, id: string): StoredSession | null {
  for (const session of book.sessions.values()) if (session.id === id) return session;
  return null;
}

export function tokenById({ book }: PeopleDesk, id: string): StoredToken | null {
  for (const token of book.tokens.values()) if (token.id === id) return token;
  return null;
}

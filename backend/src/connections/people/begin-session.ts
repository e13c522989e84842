import type { AuditEntry } from '../../ports/audit';
import type { BegunSession } from '../../ports/people';
import { ok } from '@ebbline/shared/errors/result';
import { callerOfSession } from './callers';
import type { Answer, PeopleDesk } from './people-desk';
import { refused } from './people-fault';
import { digestOf, newId, newSecret } from './secret';
import type { Change, StoredSession } from './stored';

/** So many sessions at once under one name; the one in which nobody acted for longest ends for a new one. */
export const mostSessions = 20;
/** So many on the demo site in all, under whatever names. */
export const mostDemoSessions = 200;

/** Begins a session with the record of it, and whatever else is to be committed along. */
export function beginSession(
  desk: PeopleDesk,
  holder: { readonly personId: string | null; readonly name: string },
  station: string,
  entry: AuditEntry,
  changes: readonly Change[] = [],
): Answer<BegunSession> {
  const secret = newSecret(desk.random);
  const nowMs = Math.round(desk.clock.wallMs());
  const times = { begunMs: nowMs, actedMs: nowMs };
  const session: StoredSession = { digest: digestOf(secret), id: newId(desk.random), ...holder, ...times, station };
  const room = tooMuch(desk, session).map(({ digest }): Change => ({ drop: 'session', digest }));
  const fault = desk.book.commit([...changes, ...room, { put: 'session', row: session }], entry);
  if (fault !== null) return refused(fault);
  const caller = callerOfSession(desk, session, secret);
  return caller === null ? refused('SIGN_IN_REFUSED') : ok({ caller, secret });
}

/** Sessions that have to end for a new one. */
function tooMuch({ book }: PeopleDesk, { personId, name }: StoredSession): readonly StoredSession[] {
  const byQuiet = [...book.sessions.values()].sort((a, b) => a.actedMs - b.actedMs);
  const own = byQuiet.filter((one) => one.personId === personId && one.name === name);
  const demo = personId === null ? byQuiet.filter((one) => one.personId === null) : [];
  const over = (all: readonly StoredSession[], most: number): readonly StoredSession[] =>
    all.slice(0, Math.max(0, all.length - most + 1));
  return [...new Set([...over(own, mostSessions), ...over(demo, mostDemoSessions)])];
}

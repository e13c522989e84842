import type { Role } from '@ebbline/shared/contract/people';
import { isMadeAhead } from './made-ahead';

const minuteMs = 60_000;
const hourMs = 60 * minuteMs;

export interface SessionTimes {
  readonly endsAfterMs: number;
  /** Null: does not end by idling. */
  readonly idleEndsAfterMs: number | null;
}

/** Who may act signs in once a shift, and again after an hour away (NIST SP 800-63B-4 section 2.2.3, AAL2; from memory). */
const acting: SessionTimes = { endsAfterMs: 12 * hourMs, idleEndsAfterMs: 60 * minuteMs };

/** A display on the wall only looks, and nobody sits at it. */
const looking: SessionTimes = { endsAfterMs: 30 * 24 * hourMs, idleEndsAfterMs: null };

/** How long a session lasts, by role; the one place that says it. */
export const sessionTimes: Readonly<Record<Role, SessionTimes>> = {
  viewer: looking,
  operator: acting,
  engineer: acting,
  admin: acting,
};

/**
 * Whoever came by an identity provider comes again once a shift, a display on the wall too: what was taken from them there, their groups
 * or their place, is heard of only when they sign in.
 */
const timesOf = (role: Role, byProvider: boolean): SessionTimes =>
  byProvider
    ? { ...sessionTimes[role], endsAfterMs: Math.min(sessionTimes[role].endsAfterMs, acting.endsAfterMs) }
    : sessionTimes[role];

/** When a session that began at `begunMs`, and in which someone last acted at `actedMs`, ends. The role is that of now: who is given more rights has a shorter session. */
export function sessionEnds(
  role: Role,
  begunMs: number,
  actedMs: number,
  byProvider = false,
): { readonly endsMs: number; readonly idleEndsMs: number | null } {
  const { endsAfterMs, idleEndsAfterMs } = timesOf(role, byProvider);
  return { endsMs: begunMs + endsAfterMs, idleEndsMs: idleEndsAfterMs === null ? null : actedMs + idleEndsAfterMs };
}

/** Why a session is over at `nowMs`; null while it goes on. It is over at the very time of its end, and where its times lie ahead of a clock that was set back. */
export function sessionOver(
  role: Role,
  begunMs: number,
  actedMs: number,
  nowMs: number,
  byProvider = false,
): 'time' | 'idle' | 'ahead' | null {
  const { endsMs, idleEndsMs } = sessionEnds(role, begunMs, actedMs, byProvider);
  if (nowMs >= endsMs) return 'time';
  if (isMadeAhead(Math.max(begunMs, actedMs), nowMs)) return 'ahead';
  return idleEndsMs !== null && nowMs >= idleEndsMs ? 'idle' : null;
}

import type { Link } from '../feed/use-live-feed';

/** connecting: nothing yet; live; lagging: frames come late; lost: what is shown is old. */
export type ConnectionState = 'connecting' | 'live' | 'lagging' | 'lost';

/** The server sends a frame a second at least; one and a half late is worth a word. ms. */
export const laggingAfterMs = 1750;
/** With a look each 200 ms everything is marked old before 3 s have passed. ms. */
export const lostAfterMs = 2300;

/**
 * The state of the connection by the time since the last frame: a stopped server keeps its socket open,
 * so an open socket proves nothing.
 * @param msSinceFrame null before the first frame
 */
export function judgeConnection(link: Link, msSinceFrame: number | null): ConnectionState {
  if (msSinceFrame === null) return link === 'closed' ? 'lost' : 'connecting';
  if (link === 'closed' || msSinceFrame > lostAfterMs) return 'lost';
  return msSinceFrame > laggingAfterMs ? 'lagging' : 'live';
}

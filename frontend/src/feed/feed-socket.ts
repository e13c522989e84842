import type { ScreenToServer, ServerToScreen } from '@ebbline/shared/contract/live-feed';

/** What the feed needs of a socket: the typed event map, the events of the connection itself, a way to begin anew, and an end. */
export interface FeedSocket {
  on<Event extends keyof ServerToScreen>(event: Event, listener: ServerToScreen[Event]): unknown;
  on(event: 'connect' | 'disconnect', listener: () => void): unknown;
  /** The server has closed the door: the socket does not come again by itself. */
  onTurnedAway(listener: () => void): unknown;
  emit<Event extends keyof ScreenToServer>(event: Event, ...payload: Parameters<ScreenToServer[Event]>): unknown;
  /** Connects, also where it was never connected; what it shows of who asks is asked for at each handshake. */
  connect(): unknown;
  /** Ends the connection until `connect`. */
  close(): unknown;
}

import type { ScreenToServer, ServerToScreen } from '@ebbline/shared/contract/live-feed';

/** What the feed needs of a socket: the typed event map, the two events of the connection itself, and an end. */
export interface FeedSocket {
  on<Event extends keyof ServerToScreen>(event: Event, listener: ServerToScreen[Event]): unknown;
  on(event: 'connect' | 'disconnect', listener: () => void): unknown;
  emit<Event extends keyof ScreenToServer>(event: Event, ...payload: Parameters<ScreenToServer[Event]>): unknown;
  close(): unknown;
}

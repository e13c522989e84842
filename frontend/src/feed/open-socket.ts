import type { ScreenToServer, ServerToScreen } from '@ebbline/shared/contract/live-feed';
import type { Socket } from 'socket.io-client';
import { io } from 'socket.io-client';
import type { FeedSocket } from './feed-socket';

/** Opens the live feed of the server that the page came from. It reconnects by itself, with growing pauses. */
export function openSocket(): FeedSocket {
  const socket: Socket<ServerToScreen, ScreenToServer> = io({
    transports: ['websocket', 'polling'],
    reconnectionDelay: 500,
    reconnectionDelayMax: 4000,
    timeout: 5000,
  });
  return {
    on: (event: string, listener: (...given: never[]) => void) => socket.on(event as never, listener as never),
    emit: (event, ...payload) => socket.emit(event, ...payload),
    close: () => socket.close(),
  };
}

import type { ScreenToServer, ServerToScreen } from '@ebbline/shared/contract/live-feed';
import type { Socket } from 'socket.io-client';
import { io } from 'socket.io-client';
import type { FeedSocket } from './feed-socket';

/**
 * A socket for the live feed of the server that the page came from; `connect` opens it. It reconnects by itself, with
 * growing pauses, unless the server has turned it away.
 * @param csrf of the session as it is then, asked for at every handshake
 */
export function openSocket(csrf: () => string | null): FeedSocket {
  const socket: Socket<ServerToScreen, ScreenToServer> = io({
    autoConnect: false,
    transports: ['websocket', 'polling'],
    reconnectionDelay: 500,
    reconnectionDelayMax: 4000,
    timeout: 5000,
    auth: (give) => {
      const known = csrf();
      give(known === null ? {} : { csrf: known });
    },
  });
  return {
    on: (event: string, listener: (...given: never[]) => void) => socket.on(event as never, listener as never),
    onTurnedAway(listener) {
      // `active` is false where the library will not try again by itself.
      socket.on('connect_error', () => {
        if (!socket.active) listener();
      });
      socket.on('disconnect', (reason) => {
        if (reason === 'io server disconnect') listener();
      });
    },
    emit: (event, ...payload) => socket.emit(event, ...payload),
    connect: () => socket.connect(),
    close: () => socket.close(),
  };
}

import type { ScreenToServer, ServerToScreen } from '@ebbline/shared/contract/live-feed';
import { io, type Socket } from 'socket.io-client';
import { signInAt } from './sign-in';

export type Feed = Socket<ServerToScreen, ScreenToServer>;

/** A socket of its own, as a browser opens one, signed in as the test's machine. */
export const openFeed = (url: string, reconnection = true): Feed =>
  io(url, {
    transports: ['websocket'],
    reconnection,
    forceNew: true,
    auth: (give) => void signInAt(url).handshake().then(give),
  });

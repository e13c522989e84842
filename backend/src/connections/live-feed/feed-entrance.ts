import { z } from 'zod';
import type { ViewRefusal } from '@ebbline/shared/contract/live-feed';
import type { EdgeRequest } from '../../ports/edge';
import type { Entrance, EntranceFault, Visitor } from '../../ports/entrance';

/** What a client may send with its handshake: a page what the session gave it, a machine its token. */
const handshakeSchema = z.object({ csrf: z.string().optional(), token: z.string().optional() }).catch({});

/** What of a socket is looked at. */
export interface GuardedSocket {
  readonly id: string;
  readonly request: EdgeRequest;
  readonly handshake: { readonly auth: unknown };
  emit(event: 'refused', refusal: ViewRefusal): unknown;
  disconnect(close: true): unknown;
}

/** Who sits behind which socket; a socket ends with what let it in. */
export class FeedEntrance {
  private readonly visitors = new WeakMap<GuardedSocket, Visitor>();
  private readonly connected = new Set<GuardedSocket>();

  constructor(private readonly entrance: Entrance) {}

  /** Null where the socket is let in. */
  admit(socket: GuardedSocket): EntranceFault | null {
    const { csrf = null, token = null } = handshakeSchema.parse(socket.handshake.auth);
    const known = this.entrance.visitorOf(socket.request, { token, acts: false });
    if (!known.ok) return known.fault;
    const refusal = this.entrance.refusalOf(known.value, 'look', csrf);
    if (refusal === null) this.visitors.set(socket, known.value);
    return refusal;
  }

  join(socket: GuardedSocket): void {
    this.connected.add(socket);
  }

  leave(socket: GuardedSocket): void {
    this.connected.delete(socket);
  }

  /** Ends the socket, and says so, where its session or token is not in force any more. */
  isLetIn(socket: GuardedSocket): boolean {
    const visitor = this.visitors.get(socket);
    if (visitor !== undefined && this.entrance.isInForce(visitor)) return true;
    this.leave(socket);
    socket.emit('refused', { code: 'SIGN_IN_NEEDED', message: 'The session or the token is over: sign in anew.' });
    socket.disconnect(true);
    return false;
  }

  /** One look at all who are connected. */
  look(): void {
    for (const socket of [...this.connected]) this.isLetIn(socket);
  }
}

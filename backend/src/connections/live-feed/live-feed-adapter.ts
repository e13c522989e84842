import type { IncomingMessage } from 'node:http';
import type { INestApplication } from '@nestjs/common';
import { IoAdapter } from '@nestjs/platform-socket.io';
import type { ViewRefusal } from '@ebbline/shared/contract/live-feed';
import type { Edge } from '../../ports/edge';
import type { RateLimits } from '../../ports/rate-limits';
import { SocketLimits, type CountedSocket } from './socket-limits';

/** Those of the copy of socket.io that the framework brings along; its types differ from ours. */
type ServerOptions = NonNullable<Parameters<IoAdapter['createIOServer']>[1]>;

/** A connection that asks for nothing within this time makes room for another one. */
const CONNECT_WITHIN_MS = 5000;

/** The largest message a client may send: `show` with an id. */
const MESSAGE_LIMIT_BYTES = 4096;
const tooOften: ViewRefusal = {
  code: 'VIEW_TOO_OFTEN',
  message: 'This station asks for more than it may; ask again in a minute.',
};

/** The socket server, with the same rule of who is let in as the HTTP interface, and its limits. */
export class LiveFeedAdapter extends IoAdapter {
  private readonly limits: SocketLimits;

  constructor(
    app: INestApplication,
    private readonly edge: Edge,
    rates: RateLimits,
  ) {
    super(app);
    this.limits = new SocketLimits(edge, rates);
  }

  override createIOServer(port: number, options?: ServerOptions): ReturnType<IoAdapter['createIOServer']> {
    const { edge, limits } = this;
    const ours: Partial<ServerOptions> = {
      serveClient: false,
      connectTimeout: CONNECT_WITHIN_MS,
      maxHttpBufferSize: MESSAGE_LIMIT_BYTES,
      perMessageDeflate: false,
      allowRequest: (request: IncomingMessage, decide) => {
        const refusal = edge.refusalOf(request);
        if (refusal !== null) {
          decide(refusal.code, false);
          return;
        }
        limits.mayOpen(request).then(
          (may) => decide(may ? null : 'TOO_MANY_REQUESTS', may),
          () => decide('INTERNAL', false),
        );
      },
    };
    const server = super.createIOServer(port, { ...options, ...ours } as ServerOptions);
    server.engine.on('connection', (socket: CountedSocket) => limits.count(socket));
    server.on('connection', (socket) => {
      socket.use((_event, next) => {
        limits.mayAsk(socket.request).then((may) => (may ? next() : socket.emit('refused', tooOften)), next);
      });
    });
    return server;
  }
}

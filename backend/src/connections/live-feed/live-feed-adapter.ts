import type { IncomingMessage } from 'node:http';
import type { INestApplication } from '@nestjs/common';
import { IoAdapter } from '@nestjs/platform-socket.io';
import type { AccessPolicy } from '../../ports/access-policy';

/** Those of the copy of socket.io that the framework brings along; its types differ from ours. */
type ServerOptions = NonNullable<Parameters<IoAdapter['createIOServer']>[1]>;

/** The largest message a client may send: `show` with an id. */
const MESSAGE_LIMIT_BYTES = 4096;

/** The socket server, with the same rule of who is let in as the HTTP interface. */
export class LiveFeedAdapter extends IoAdapter {
  constructor(
    app: INestApplication,
    private readonly policy: AccessPolicy,
  ) {
    super(app);
  }

  override createIOServer(port: number, options?: ServerOptions): ReturnType<IoAdapter['createIOServer']> {
    const ours: Partial<ServerOptions> = {
      serveClient: false,
      maxHttpBufferSize: MESSAGE_LIMIT_BYTES,
      perMessageDeflate: false,
      allowRequest: (request: IncomingMessage, decide) => {
        const { host, origin } = request.headers;
        const refusal = this.policy.refusalOf({ host, origin });
        decide(refusal?.code ?? null, refusal === null);
      },
    };
    return super.createIOServer(port, { ...options, ...ours } as ServerOptions);
  }
}

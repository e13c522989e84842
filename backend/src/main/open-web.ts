import type { ValueProvider } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { AppModule } from '../app.module';
import { accessPolicy } from '../connections/config/access-policy';
import { whoHoldsPort } from '../connections/config/who-holds-port';
import { configureHttp } from '../connections/http-api/configure-http';
import { LiveFeedAdapter } from '../connections/live-feed/live-feed-adapter';
import type { ClosingStack } from './closing-stack';
import { StartFault } from './start-fault';

export interface WebPlace {
  readonly host: string;
  readonly port: number;
  readonly frontendFolder: string | null;
  readonly report: (fault: unknown) => void;
}

/** Opens HTTP and the live feed; gives the address under which they are reached. */
export async function openWeb(
  parts: readonly ValueProvider[],
  place: WebPlace,
  closing: ClosingStack,
): Promise<string> {
  // The framework's options are a class by declaration only: no constructor of it is offered.
  // eslint-disable-next-line @typescript-eslint/no-unsafe-class-instance-assignment
  const app = await NestFactory.create<NestExpressApplication>(AppModule.of(parts), {
    logger: false,
    bodyParser: false,
    abortOnError: false,
    forceCloseConnections: true,
  });
  closing.add(() => app.close());
  const policy = accessPolicy(place.host);
  configureHttp(app, { policy, frontendFolder: place.frontendFolder, report: place.report });
  app.useWebSocketAdapter(new LiveFeedAdapter(app, policy));
  try {
    await app.listen(place.port, place.host);
  } catch (error) {
    throw startFault(error, place);
  }
  const { port } = app.getHttpServer().address() as { port: number };
  return `http://${place.host.includes(':') ? `[${place.host}]` : place.host}:${port}/`;
}

/** A port that can't be had is for the one who starts the program to settle; anything else is a fault of ours. */
function startFault(error: unknown, { host, port }: WebPlace): unknown {
  switch ((error as NodeJS.ErrnoException).code) {
    case 'EADDRINUSE': {
      const holder = whoHoldsPort(port);
      const told = holder === null ? ' by a program that can not be named here' : ` by ${holder}`;
      return new StartFault([
        `The HTTP port ${port} is taken${told}.`,
        'End that program, or set EBBLINE_HTTP_PORT to a free port.',
      ]);
    }
    case 'EACCES':
      return new StartFault([
        `The HTTP port ${port} may not be used by this user.`,
        'Set EBBLINE_HTTP_PORT to a port above 1023.',
      ]);
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return new StartFault([`${host} is no address of this machine.`, 'Set EBBLINE_HTTP_HOST to 127.0.0.1.']);
    default:
      return error;
  }
}

import type { Server } from 'node:https';
import type { ValueProvider } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { AppModule } from '../app.module';
import type { Environment } from '../connections/config/environment';
import { followCertificate } from '../connections/config/renewed-certificate';
import { readServerCertificate, type ServerCertificate } from '../connections/config/server-certificate';
import { configureHttp } from '../connections/http-api/configure-http';
import { LiveFeedAdapter } from '../connections/live-feed/live-feed-adapter';
import { memoryRateLimits } from '../connections/rate-limits/memory-rate-limits';
import type { Edge } from '../ports/edge';
import type { People } from '../ports/people';
import { RATE_LIMITS } from '../ports/rate-limits';
import type { Ticker } from '../ports/ticker';
import type { ClosingStack } from './closing-stack';
import { refuseWithoutAdmin } from './refuse-without-admin';
import { StartFault } from './start-fault';
import { webStartFault } from './web-start-fault';

export interface WebPlace {
  readonly environment: Environment;
  readonly edge: Edge;
  readonly people: Pick<People, 'setUpNeeded'>;
  readonly ticker: Ticker;
  readonly say: (line: string) => void;
  readonly frontendFolder: string | null;
  readonly report: (fault: unknown) => void;
}

const names = { certificate: 'EBBLINE_TLS_CERTIFICATE_FILE', key: 'EBBLINE_TLS_KEY_FILE' };

/** Opens HTTP and the live feed; gives the address under which they are reached. */
export async function openWeb(
  parts: readonly ValueProvider[],
  { environment, edge, people, ticker, say, frontendFolder, report }: WebPlace,
  closing: ClosingStack,
): Promise<string> {
  const { httpHost: host, httpPort, edge: settings } = environment;
  refuseWithoutAdmin(environment, people);
  const certificate = certificateOf(environment);
  const limits = memoryRateLimits();
  const ours: ValueProvider[] = [{ provide: RATE_LIMITS, useValue: limits }];
  // The framework's options are a class by declaration only: no constructor of it is offered.
  /* eslint-disable @typescript-eslint/no-unsafe-class-instance-assignment */
  const app = await NestFactory.create<NestExpressApplication>(AppModule.of([...parts, ...ours]), {
    logger: false,
    bodyParser: false,
    abortOnError: false,
    forceCloseConnections: true,
    ...(certificate === null ? {} : { httpsOptions: certificate }),
  });
  /* eslint-enable @typescript-eslint/no-unsafe-class-instance-assignment */
  closing.add(() => app.close());
  configureHttp(app, { edge, limits, frontendFolder, report });
  app.useWebSocketAdapter(new LiveFeedAdapter(app, edge, limits));
  try {
    await app.listen(httpPort, host);
  } catch (error) {
    throw webStartFault(error, { host, port: httpPort });
  }
  if (settings.tls !== null) {
    const server = app.getHttpServer() as unknown as Server;
    const use = (renewed: ServerCertificate): void => server.setSecureContext(renewed);
    const following = followCertificate({ files: settings.tls, names, ticker, say, use });
    closing.add(() => following.stop());
  }
  const { port } = app.getHttpServer().address() as { port: number };
  const at = `${host.includes(':') ? `[${host}]` : host}:${port}`;
  if (settings.publicUrl === null) return `${certificate === null ? 'http' : 'https'}://${at}/`;
  // What is printed last is what browsers open; a proxy has to know this one.
  say(`${certificate === null ? 'HTTP' : 'HTTPS'} on ${at}`);
  return `${settings.publicUrl}/`;
}

function certificateOf({ edge: { tls } }: Environment): ServerCertificate | null {
  if (tls === null) return null;
  const read = readServerCertificate(tls, names);
  if (!read.ok) throw new StartFault([read.fault]);
  return read.value;
}

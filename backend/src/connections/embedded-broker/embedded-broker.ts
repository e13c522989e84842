import { createServer, type AddressInfo, type Server, type Socket } from 'node:net';
import { createServer as createTlsServer, type Server as TlsServer } from 'node:tls';
import { Aedes } from 'aedes';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { BrokerRefusal } from '../../ports/broker-access';
import { boundedConnection } from './bounded-connection';
import { boundedOptions } from './bounded-options';
import { BrokerGuard, type GuardSettings } from './broker-guard';
import type { BrokerLimits } from './broker-limits';
import { FirstHearing } from './first-hearing';
import { drawOwnUsers } from './own-users';
import { WaitingPlaces } from './waiting-places';

/** A broker of our own, MQTT 3.1.1, for where no other stands. */
export interface EmbeddedBroker {
  /** Where others come to. */
  readonly port: number;
  /** For ourselves, with a password drawn at this start: never printed. */
  readonly ownUrl: string;
  /** The same for the simulator. */
  readonly simulatorUrl: string;
  /** How often who or what was refused. */
  refused(): Readonly<Record<BrokerRefusal, number>>;
  /** New connections get this certificate. */
  renew(certificate: BrokerCertificate): void;
  close(): Promise<void>;
}

export interface BrokerCertificate {
  readonly cert: Buffer;
  readonly key: Buffer;
  readonly minVersion: 'TLSv1.2';
}

export interface BrokerPlace {
  readonly host: string;
  /** 0 takes a free port. */
  readonly port: number;
  /** True: this port or none. False: where it is taken, the next free one will do. */
  readonly portSet: boolean;
  /** Null: without TLS. */
  readonly certificate: BrokerCertificate | null;
  readonly limits: BrokerLimits;
  readonly access: Omit<GuardSettings, 'ownUsers'>;
  /** So long others wait for our own client to hear before they are let in; null: they need not. */
  readonly heardWithinMs: number | null;
}

const LOOPBACK = '127.0.0.1';
/** How many ports are tried after the first; more taken ones in a row mean that something else is wrong. */
const PORTS_TRIED = 100;
const HANDSHAKE_WITHIN_MS = 10_000;

/** Starts to listen. Throws `BROKER_PORT_TAKEN` where no port of those allowed is free. */
export async function startEmbeddedBroker(place: BrokerPlace): Promise<EmbeddedBroker> {
  const { host, certificate, limits, access, heardWithinMs } = place;
  const own = drawOwnUsers();
  const guard = new BrokerGuard({ ...access, ownUsers: [own.backend, own.simulator] });
  const socketOf = new WeakMap<object, Socket>();
  const stationOf = (connection: object): string =>
    (socketOf.get(connection)?.remoteAddress ?? '').replace(/^::ffff:/, '');
  const hearing = new FirstHearing(heardWithinMs);
  const aedes = await Aedes.createBroker(boundedOptions(limits, access.ownClientId, guard, stationOf, hearing));
  aedes.on('subscribe', (_topics, { id }) => {
    if (id === access.ownClientId) hearing.begun();
  });
  const places = new WaitingPlaces(limits);
  aedes.on('clientReady', ({ conn }) => {
    const socket = socketOf.get(conn);
    if (socket !== undefined) places.letIn(socket);
  });
  const sockets = new Set<Socket>();
  const welcome = (socket: Socket): void => {
    sockets.add(socket);
    socket.once('close', () => sockets.delete(socket));
    const connection = boundedConnection(socket, limits);
    socketOf.set(connection, socket);
    aedes.handle(connection);
  };
  const secured =
    certificate === null
      ? null
      : createTlsServer({ ...certificate, handshakeTimeout: HANDSHAKE_WITHIN_MS }, welcome).on(
          'tlsClientError',
          (_fault, socket) => socket.destroy(),
        );
  const outer = secured ?? createServer(welcome);
  outer.maxConnections = limits.clients;
  // Before the handshake of TLS, which takes its time as well.
  outer.prependListener('connection', (socket: Socket) => places.take(socket));
  const servers: (Server | TlsServer)[] = [outer];
  const close = (): Promise<void> => closeAll(aedes, servers, sockets);
  const port = await listenFrom(outer, place);
  if (port === null) {
    await new Promise<void>((resolve) => aedes.close(resolve));
    throw new CodedError('BROKER_PORT_TAKEN', `port ${place.port} is taken`);
  }
  let ownPort = port;
  if (secured !== null || host !== LOOPBACK) {
    // Ourselves we reach on loopback, where there is no one between, and others cannot take our places.
    const inner = createServer(welcome);
    inner.maxConnections = limits.clients;
    servers.push(inner);
    await listens(inner, LOOPBACK, 0);
    ownPort = (inner.address() as AddressInfo).port;
  }
  const urlOf = ({ name, password }: typeof own.backend): string => `mqtt://${name}:${password}@${LOOPBACK}:${ownPort}`;
  return {
    port,
    ownUrl: urlOf(own.backend),
    simulatorUrl: urlOf(own.simulator),
    refused: () => ({ ...guard.refused }),
    renew: (renewed) => secured?.setSecureContext(renewed),
    close,
  };
}

/** The port that it listens on; null where none of those allowed is free. */
async function listenFrom(server: Server, { host, port: first, portSet }: BrokerPlace): Promise<number | null> {
  const last = first === 0 || portSet ? first : Math.min(65535, first + PORTS_TRIED);
  for (let port = first; port <= last; port++)
    if (await listens(server, host, port)) return (server.address() as AddressInfo).port;
  return null;
}

/** False where the port is taken; any other fault is thrown. */
function listens(server: Server, host: string, port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const failed = (error: NodeJS.ErrnoException): void => {
      if (error.code === 'EADDRINUSE') resolve(false);
      else reject(error);
    };
    server.once('error', failed);
    server.listen(port, host, () => {
      server.off('error', failed);
      resolve(true);
    });
  });
}

async function closeAll(aedes: Aedes, servers: readonly Server[], sockets: ReadonlySet<Socket>): Promise<void> {
  await new Promise<void>((resolve) => aedes.close(resolve));
  for (const socket of sockets) socket.destroy();
  await Promise.all(servers.map((server) => new Promise<void>((resolve) => server.close(() => resolve()))));
}

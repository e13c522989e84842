import { createServer, type AddressInfo, type Server, type Socket } from 'node:net';
import { Aedes } from 'aedes';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { boundedConnection } from './bounded-connection';
import { boundedOptions } from './bounded-options';
import type { BrokerLimits } from './broker-limits';

/** A broker of our own, MQTT 3.1.1, for where no other stands: reached from this machine only. */
export interface EmbeddedBroker {
  readonly port: number;
  close(): Promise<void>;
}

export interface BrokerPlace {
  /** 0 takes a free port. */
  readonly port: number;
  /** True: this port or none. False: where it is taken, the next free one will do. */
  readonly portSet: boolean;
  readonly limits: BrokerLimits;
  /** Under which we connect ourselves. */
  readonly ownClientId: string;
}

const HOST = '127.0.0.1';
/** How many ports are tried after the first; more taken ones in a row mean that something else is wrong. */
const PORTS_TRIED = 100;

/** Starts to listen. Throws `BROKER_PORT_TAKEN` where no port of those allowed is free. */
export async function startEmbeddedBroker(place: BrokerPlace): Promise<EmbeddedBroker> {
  const aedes = await Aedes.createBroker(boundedOptions(place.limits, place.ownClientId));
  const sockets = new Set<Socket>();
  const server = createServer((socket) => {
    sockets.add(socket);
    socket.once('close', () => sockets.delete(socket));
    aedes.handle(boundedConnection(socket, place.limits));
  });
  server.maxConnections = place.limits.clients;
  const last = place.port === 0 || place.portSet ? place.port : Math.min(65535, place.port + PORTS_TRIED);
  for (let port = place.port; port <= last; port++) {
    if (await listens(server, port)) {
      return { port: (server.address() as AddressInfo).port, close: () => closeAll(aedes, server, sockets) };
    }
  }
  await new Promise<void>((resolve) => aedes.close(resolve));
  throw new CodedError('BROKER_PORT_TAKEN', `port ${place.port} is taken`);
}

/** False where the port is taken; any other fault is thrown. */
function listens(server: Server, port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const failed = (error: NodeJS.ErrnoException): void => {
      if (error.code === 'EADDRINUSE') resolve(false);
      else reject(error);
    };
    server.once('error', failed);
    server.listen(port, HOST, () => {
      server.off('error', failed);
      resolve(true);
    });
  });
}

async function closeAll(aedes: Aedes, server: Server, sockets: ReadonlySet<Socket>): Promise<void> {
  await new Promise<void>((resolve) => aedes.close(resolve));
  for (const socket of sockets) socket.destroy();
  await new Promise<void>((resolve) => server.close(() => resolve()));
}

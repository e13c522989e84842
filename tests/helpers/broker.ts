import { writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { connectAsync } from 'mqtt';
import { onFreePort } from './free-port';
import { found, pathOf } from './requirements';
import { startProcess } from './server-process';
import { temporaryFolder } from './temporary-folder';
import { until } from './until';

export interface TestBroker {
  readonly kind: 'mosquitto' | 'embedded';
  readonly port: number;
  readonly url: string;
  stop(): Promise<void>;
}

export interface BrokerOptions {
  /** Further lines of the mosquitto configuration. */
  readonly configuration?: readonly string[];
}

/** A real broker on 127.0.0.1: mosquitto where it is here, else the embedded one over real TCP. */
export function startBroker(): Promise<TestBroker> {
  return found('mosquitto') === null ? startEmbeddedBroker() : startMosquitto();
}

/** mosquitto with a configuration of its own on a free port. Needs 'mosquitto'. */
export function startMosquitto(options: BrokerOptions = {}): Promise<TestBroker> {
  const program = pathOf('mosquitto');
  return onFreePort(async (port) => {
    const folder = await temporaryFolder();
    const configuration = join(folder.path, 'mosquitto.conf');
    const lines = [
      `listener ${port} 127.0.0.1`,
      'persistence false',
      ...(options.configuration ?? ['allow_anonymous true']),
    ];
    await writeFile(configuration, `${lines.join('\n')}\n`, { mode: 0o644 });
    const server = startProcess(program, ['-c', configuration]);
    const stop = async (): Promise<void> => {
      await server.stop();
      await folder.stop();
    };
    try {
      const ready = until(() => /mosquitto version .* running/.test(server.output()), { what: 'mosquitto to run' });
      await Promise.race([ready, server.ended]);
      return { kind: 'mosquitto', port, url: `mqtt://127.0.0.1:${port}`, stop };
    } catch (fault) {
      await stop();
      throw fault;
    }
  });
}

/** A broker in this process over real TCP; MQTT 3.1.1. */
export async function startEmbeddedBroker(): Promise<TestBroker> {
  const { Aedes } = await import('aedes');
  const broker = await Aedes.createBroker();
  const server = createServer(broker.handle);
  const port = await new Promise<number>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : 0);
    });
  });
  return {
    kind: 'embedded',
    port,
    url: `mqtt://127.0.0.1:${port}`,
    stop: async () => {
      await new Promise<void>((resolve) => broker.close(() => resolve()));
      await new Promise<void>((resolve) => server.close(() => resolve()));
    },
  };
}

/** Any MQTT client, as an outsider would use one. */
export async function connectClient(broker: Pick<TestBroker, 'url'>, options: Parameters<typeof connectAsync>[1] = {}) {
  const client = await connectAsync(broker.url, { reconnectPeriod: 0, ...options });
  return { client, stop: () => client.endAsync(true) };
}

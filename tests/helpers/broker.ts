import { createServer } from 'node:net';
import { connectAsync } from 'mqtt';
import { type BrokerOptions, launchMosquitto } from './mosquitto';
import { found, pathOf } from './requirements';

export interface TestBroker {
  readonly kind: 'mosquitto' | 'embedded';
  readonly port: number;
  readonly url: string;
  stop(): Promise<void>;
}

/**
 * A real broker on 127.0.0.1: mosquitto where it is here, else the embedded one over real TCP. It keeps what a busy reader
 * has not taken yet: with mosquitto's own bound of 1,000 messages, a recording played faster than it is judged loses some.
 */
export function startBroker(): Promise<TestBroker> {
  if (found('mosquitto') === null) return startEmbeddedBroker();
  return startMosquitto({
    configuration: ['allow_anonymous true', 'max_inflight_messages 1000', 'max_queued_messages 400000'],
  });
}

/** mosquitto with a configuration of its own. Needs 'mosquitto'. */
export async function startMosquitto(options: BrokerOptions = {}): Promise<TestBroker> {
  return { kind: 'mosquitto', ...(await launchMosquitto(pathOf('mosquitto'), options)) };
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

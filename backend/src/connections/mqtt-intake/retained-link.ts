import { MqttClient } from 'mqtt';
import type { RetainedHearer, RetainedTopics } from '../../ports/retained-topics';
import { backOffMs } from './back-off';
import type { BrokerAddress } from './broker-address';
import { endWithin } from './end-within';
import { openWire } from './open-wire';
import type { TlsFiles } from './tls-files';

export interface RetainedLinkSettings {
  readonly address: BrokerAddress;
  /** Null where the connection is not secured. */
  readonly tlsFiles: TlsFiles | null;
  /** Of its own: the intake has another. */
  readonly clientId: string;
  /** 0 ≤ random < 1, for the back-off. */
  readonly random: () => number;
}

const CONNECT_WITHIN_MS = 10_000;
const KEEPALIVE_S = 20;
/** Return code of a subscription that the broker did not take [MQTT-3.9.3-2]. */
const REFUSED_FROM = 0x80;

/**
 * A connection to the broker for what it is to keep, apart from the intake's, so that neither waits for the other. Of
 * MQTT 3.1.1, which brokers of version 5 speak as well. Why it fails is told by the intake, which has the same address.
 */
export class RetainedLink implements RetainedTopics {
  private client: MqttClient | null = null;
  private retry: NodeJS.Timeout | null = null;
  private attempt = 0;
  private stopped = false;
  /** Ends what waits for the broker of a connection that is gone. */
  private readonly unconfirmed = new Set<() => void>();

  constructor(private readonly settings: RetainedLinkSettings) {}

  start(filter: string, hearer: RetainedHearer): void {
    const { address, tlsFiles, clientId, random } = this.settings;
    const client = new MqttClient(() => openWire(address, tlsFiles, ignore), {
      clientId,
      protocolVersion: 4,
      clean: true,
      reconnectPeriod: 0,
      connectTimeout: CONNECT_WITHIN_MS,
      keepalive: KEEPALIVE_S,
      resubscribe: false,
      queueQoSZero: false,
      ...(address.username === null ? {} : { username: address.username }),
      ...(address.password === null ? {} : { password: address.password }),
    });
    this.client = client;
    client.on('connect', () => {
      this.attempt = 0;
      hearer.connected();
      client.subscribe(filter, { qos: 1 }, (error, granted) => {
        const refused = granted?.some(({ qos }) => qos >= REFUSED_FROM) ?? true;
        if ((error === null || error === undefined) && !refused) hearer.asked?.();
      });
    });
    // What is told while we listen is marked as not retained [MQTT-3.3.1-9]: it is our own.
    client.on('message', (topic, payload, packet) => {
      if (packet.retain) hearer.held(topic, payload.toString('utf8'));
    });
    client.on('error', () => {
      if (!client.connected) client.end(true);
    });
    client.once('close', () => {
      client.removeAllListeners('message');
      if (!client.disconnecting) client.end(true);
      for (const end of [...this.unconfirmed]) end();
      hearer.lost();
      if (this.stopped) return;
      this.retry = setTimeout(() => this.start(filter, hearer), backOffMs(this.attempt, random()));
      this.attempt += 1;
    });
  }

  put(topic: string, payload: string): Promise<boolean> {
    const { client } = this;
    if (client?.connected !== true) return Promise.resolve(false);
    return new Promise((resolve) => {
      const end = (had: boolean): void => {
        this.unconfirmed.delete(lost);
        resolve(had);
      };
      const lost = (): void => end(false);
      this.unconfirmed.add(lost);
      client.publish(topic, payload, { qos: 1, retain: true }, (error) => end(error === undefined || error === null));
    });
  }

  async stop(): Promise<void> {
    this.stopped = true;
    if (this.retry !== null) clearTimeout(this.retry);
    const { client } = this;
    this.client = null;
    if (client !== null) await endWithin(client);
  }
}

/** The end of the connection says it too. */
const ignore = (): void => undefined;

import type { Duplex } from 'node:stream';
import { MqttClient } from 'mqtt';
import type { Listener } from '../../ports/listener';
import { backOffMs } from './back-off';
import type { BrokerAddress } from './broker-address';
import { connectionFault } from './connection-fault';
import { openWire } from './open-wire';
import type { TlsFiles } from './tls-files';

export interface ListeningLinkSettings {
  readonly address: BrokerAddress;
  /** Null where the connection is not secured. */
  readonly tlsFiles: TlsFiles | null;
  /** Of its own: the intake has another. */
  readonly clientId: string;
  /** 0 ≤ random < 1, for the back-off. */
  readonly random: () => number;
  /** Longest packet that is taken, bytes; a longer one ends the connection before it is held. */
  readonly packetBytes: number;
  /** Follows the lengths of the packets of one connection; false as soon as one is too long. */
  readonly lengths: () => { allows(chunk: Uint8Array): boolean };
}

const connectWithinMs = 10_000;
const keepaliveS = 20;

/**
 * A connection of its own to the broker for what is only looked at. It asks for what the broker has at QoS 0 and keeps no session,
 * so that nothing waits for it there; the intake and its counts know nothing of it. Of MQTT 3.1.1, which brokers of version 5
 * speak as well.
 */
export class ListeningLink implements Listener {
  private client: MqttClient | null = null;
  private retry: NodeJS.Timeout | null = null;
  private attempt = 0;
  private wanted: { readonly filter: string; readonly hear: (topic: string, payload: Uint8Array) => void } | null =
    null;
  private fault: string | null = null;

  constructor(private readonly settings: ListeningLinkSettings) {}

  listen(filter: string, hear: (topic: string, payload: Uint8Array) => void): void {
    void this.stop();
    this.wanted = { filter, hear };
    this.attempt = 0;
    this.connect();
  }

  trouble(): string | null {
    return this.wanted === null ? null : this.fault;
  }

  async stop(): Promise<void> {
    this.wanted = null;
    this.fault = null;
    if (this.retry !== null) clearTimeout(this.retry);
    const { client } = this;
    this.client = null;
    client?.removeAllListeners('message');
    await client?.endAsync(true).catch(ignore);
  }

  private connect(): void {
    const { address, tlsFiles, clientId, random, lengths, packetBytes } = this.settings;
    const failed = (error: Error): void => {
      this.fault = `the broker could not be used: ${connectionFault(error, address)}`;
    };
    const open = (): Duplex => {
      const [wire, bound] = [openWire(address, tlsFiles, failed), lengths()];
      // Hears each chunk beside the client: no version before 5 lets the broker be told of a bound.
      return wire.on('data', (chunk: Uint8Array) => {
        if (!bound.allows(chunk)) wire.destroy(new Error(`a message there is longer than ${packetBytes} bytes`));
      });
    };
    const client = new MqttClient(open, {
      ...{ clientId, protocolVersion: 4, clean: true, reconnectPeriod: 0, resubscribe: false, queueQoSZero: false },
      ...{ connectTimeout: connectWithinMs, keepalive: keepaliveS },
      ...(address.username === null ? {} : { username: address.username }),
      ...(address.password === null ? {} : { password: address.password }),
    });
    this.client = client;
    client.on('connect', () => {
      this.attempt = 0;
      this.fault = null;
      const { wanted } = this;
      if (wanted === null || this.client !== client) return;
      client.subscribe(wanted.filter, { qos: 0 }, (error, granted) => {
        const refused = error !== null || granted?.some(({ qos }) => (qos as number) > 2) === true;
        if (refused)
          this.fault = 'the broker refused to let this user listen there; give it the right to read these topics';
      });
    });
    client.on('message', (topic, payload) => {
      if (this.client === client) this.wanted?.hear(topic, payload);
    });
    client.on('error', (error) => {
      failed(error);
      if (!client.connected) client.end(true);
    });
    client.once('close', () => {
      client.removeAllListeners('message');
      if (!client.disconnecting) client.end(true);
      if (this.client !== client || this.wanted === null) return;
      this.fault ??= 'the connection to the broker was lost';
      this.retry = setTimeout(() => this.connect(), backOffMs(this.attempt, random()));
      this.attempt += 1;
    });
  }
}

/** The end of the connection says it too. */
const ignore = (): void => undefined;

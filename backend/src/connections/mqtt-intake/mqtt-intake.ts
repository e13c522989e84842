import type { MqttClient, IPublishPacket } from 'mqtt';
import type { Intake } from '@ebbline/shared/contract/http-api';
import type { LastPayload } from '@ebbline/shared/contract/setup';
import { matchesTopic } from '../../access/topic-filter';
import type { BrokerLink, BrokerState } from '../../ports/broker-link';
import type { Clock } from '../../ports/clock';
import type { IntakeReport } from '../../ports/intake-report';
import type { MessageSink } from '../../ports/message-sink';
import { backOffMs } from './back-off';
import { addressText, type BrokerAddress } from './broker-address';
import { connectionFault } from './connection-fault';
import { connectOnce } from './connect-once';
import { endWithin } from './end-within';
import type { HeldAcknowledgements } from './held-acknowledgements';
import { IntakeCounts } from './intake-counts';
import { OFFLINE, ONLINE } from './status-topic';
import type { TlsFiles } from './tls-files';
import { WantedTopics } from './wanted-topics';
import { WatchedPayloads } from './watched-payloads';

export interface IntakeSettings {
  readonly address: BrokerAddress;
  /** Null where the connection is not secured. */
  readonly tlsFiles: TlsFiles | null;
  readonly clientId: string;
  readonly statusTopic: string;
  readonly maximumPacketBytes: number;
  readonly subscriptions: readonly string[];
  /** A filter of topics that we write ourselves: never telemetry, whatever is subscribed to; null: there are none. */
  readonly ownTopics: string | null;
  /** Such as: port 1883 was taken, 1884 is used. */
  readonly note: string | null;
  /** 0 ≤ random < 1, for the back-off. */
  readonly random: () => number;
  /** As of the session; tests have no time to wait. */
  readonly keepaliveS?: number;
  readonly connectWithinMs?: number;
}

/** Keeps a connection to the broker, hands every message on, and counts what became of it. */
export class MqttIntake implements BrokerLink, IntakeReport {
  private readonly counts = new IntakeCounts();
  private readonly watched = new WatchedPayloads();
  private client: MqttClient | null = null;
  private retry: NodeJS.Timeout | null = null;
  private protocolVersion: 4 | 5;
  private attempt = 0;
  private connection: BrokerState['state'] = 'connecting';
  private trouble: string | null = null;
  private stopped = false;
  private readonly topics: WantedTopics;

  constructor(
    private readonly settings: IntakeSettings,
    private readonly sink: MessageSink,
    private readonly gate: HeldAcknowledgements,
    private readonly clock: Clock,
  ) {
    this.protocolVersion = settings.address.embedded ? 4 : 5;
    this.topics = new WantedTopics(settings.subscriptions);
  }

  /** Resolves after the first attempt, whatever came of it; from then on it is tried again for ever. */
  start(): Promise<void> {
    return new Promise((resolve) => this.connect(resolve));
  }

  state(): BrokerState {
    const { address, note } = this.settings;
    const words = [note, this.trouble, this.topics.trouble()].filter((word) => word !== null);
    return {
      state: this.connection,
      address: addressText(address),
      embedded: address.embedded,
      note: words.length === 0 ? null : words.join('; '),
    };
  }

  report(): Intake {
    return this.counts.report();
  }

  lastPayload(topic: string): LastPayload {
    return this.watched.ask(topic, this.clock.wallMs());
  }

  /** Other topics are wanted from now on. */
  follow(subscriptions: readonly string[]): Promise<void> {
    return this.topics.follow(subscriptions);
  }

  /** Says `offline` and disconnects, once. What was not acknowledged stays with the broker. */
  async stop(): Promise<void> {
    this.stopped = true;
    if (this.retry !== null) clearTimeout(this.retry);
    const client = this.client;
    this.client = null;
    this.topics.leave();
    if (client === null) return;
    const { statusTopic } = this.settings;
    await endWithin(client, () => client.publishAsync(statusTopic, OFFLINE, { qos: 0, retain: true }));
  }

  private connect(attempted: () => void): void {
    const session = { ...this.settings, protocolVersion: this.protocolVersion };
    const failed = (error: Error): void => {
      this.trouble = `the broker could not be used: ${connectionFault(error, session.address)}`;
    };
    const client = connectOnce(session, this.gate, failed);
    let welcomed = false;
    this.client = client;
    client.on('message', (topic, payload, packet) => this.take(topic, payload, packet));
    client.on('connect', () => {
      welcomed = true;
      this.attempt = 0;
      this.connection = 'connected';
      this.trouble = null;
      void this.subscribe(client).then(attempted);
    });
    client.on('error', (error) => {
      failed(error);
      if (!client.connected) client.end(true);
    });
    client.once('close', () => {
      client.removeAllListeners('message');
      if (!client.disconnecting) client.end(true);
      this.connection = 'lost';
      this.topics.leave();
      if (!welcomed && this.otherVersion()) {
        this.connect(attempted);
        return;
      }
      this.connectLater();
      attempted();
    });
  }

  /** A broker of MQTT 3.1.1 refuses version 5, or says nothing and hangs up: then the older one is tried at once. */
  private otherVersion(): boolean {
    if (this.settings.address.embedded || this.stopped) return false;
    this.protocolVersion = this.protocolVersion === 5 ? 4 : 5;
    return this.protocolVersion === 4;
  }

  private connectLater(): void {
    if (this.stopped) return;
    this.retry = setTimeout(() => this.connect(() => undefined), backOffMs(this.attempt, this.settings.random()));
    this.attempt += 1;
  }

  private async subscribe(client: MqttClient): Promise<void> {
    await this.topics.hearOn(client);
    if (client.connected) client.publish(this.settings.statusTopic, ONLINE, { qos: 1, retain: true });
  }

  private take(topic: string, payload: Buffer, packet: IPublishPacket): void {
    const { ownTopics } = this.settings;
    if (ownTopics !== null && matchesTopic(ownTopics, topic)) return;
    const message = { topic, payload, retained: packet.retain };
    const acceptance = this.sink.accept(message);
    const wallMs = this.clock.wallMs();
    this.counts.count(message, acceptance, wallMs);
    this.watched.see(message, acceptance, wallMs);
  }
}

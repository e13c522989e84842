import { connect, type IClientOptions, type MqttClient } from 'mqtt';

export interface RetainedText {
  readonly topic: string;
  readonly payload: string;
}

export interface LineSettings {
  readonly url: string;
  readonly name: string;
  /** Said on every connection, and what the broker says when it is lost. */
  readonly greeting: RetainedText | null;
  readonly lastWill: RetainedText | null;
  readonly onTrouble: (name: string, message: string) => void;
}

const reconnectMs = 2000;
/** So much may wait in this process for the broker's socket, bytes. */
const mostWaiting = 64 * 1024;

/** One connection to the broker, as one gateway has it. */
export class MqttLine {
  private client: MqttClient | null = null;

  constructor(private readonly settings: LineSettings) {}

  open(onMessage?: { topic: string; hear(payload: string): void }): void {
    if (this.client) return;
    const { url, name, greeting, lastWill, onTrouble } = this.settings;
    const options: IClientOptions = {
      clientId: `ebbline-sim-${name}-${process.pid}`,
      reconnectPeriod: reconnectMs,
      queueQoSZero: false,
      ...(lastWill
        ? { will: { topic: lastWill.topic, payload: Buffer.from(lastWill.payload), qos: 0, retain: true } }
        : {}),
    };
    const client = connect(url, options);
    client.on('connect', () => {
      if (greeting) client.publish(greeting.topic, greeting.payload, { retain: true });
      if (onMessage) client.subscribe(onMessage.topic, { qos: 1 });
    });
    client.on('error', (error) => onTrouble(name, error.message));
    client.on('message', (topic, payload) => {
      if (topic === onMessage?.topic) onMessage.hear(payload.toString('utf8'));
    });
    this.client = client;
  }

  get connected(): boolean {
    return this.client?.connected ?? false;
  }

  /** Connected, and the broker takes what it is sent: hardly anything waits here. */
  get takes(): boolean {
    return this.connected && (this.client?.stream.writableLength ?? 0) < mostWaiting;
  }

  /** Sends now or not at all: old telemetry is of no use after a reconnect. */
  send(topic: string, payload: string, retain = false): void {
    if (this.client?.connected) this.client.publish(topic, payload, { retain });
  }

  /** The line breaks: no goodbye, so that the broker tells the last will. */
  break(): void {
    this.client?.end(true);
    this.client = null;
  }

  /** Says the last will itself and takes leave. */
  async close(): Promise<void> {
    const { client } = this;
    this.client = null;
    if (!client) return;
    const { lastWill } = this.settings;
    if (lastWill && client.connected) await client.publishAsync(lastWill.topic, lastWill.payload, { retain: true });
    await client.endAsync(!client.connected);
  }
}

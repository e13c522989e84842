import { connectClient } from '../../helpers/broker';

/** A payload of unit m1 of the small site, in the units of measure of its site file; good unless told otherwise. */
export const telemetryOfM1 = (atMs: number, changed: Readonly<Record<string, unknown>> = {}): string =>
  JSON.stringify({
    time: new Date(atMs).toISOString(),
    quality: 'good',
    supply: { t: 35, p: -20 },
    return: { t: 43.5 },
    facility: { t: 30 },
    tank: { p: 70, level: 55 },
    separator: { p: 32 },
    flow: 346,
    exhaust: 40,
    vacuum: { hz: 25 },
    pump: { run: 1 },
    leak: 'dry',
    mode: 'RUN',
    racks: { r1: { flow: 43, t: 43 }, r2: { flow: 43, t: 44 } },
    chips: { p1: { t: 61, w: 900 } },
    ...changed,
  });

export const topicOfM1 = 'small/m1/telemetry';

export interface Sender {
  /** Publishes and resolves once the broker has it. */
  m1(atMs: number, changed?: Readonly<Record<string, unknown>>, qos?: 0 | 1): Promise<void>;
  raw(topic: string, payload: string | Buffer, options?: { qos?: 0 | 1; retain?: boolean }): Promise<void>;
  stop(): Promise<void>;
}

/** Any MQTT client from outside. */
export async function connectSender(url: string): Promise<Sender> {
  const { client, stop } = await connectClient({ url });
  const raw: Sender['raw'] = async (topic, payload, options = {}) => {
    await client.publishAsync(topic, payload, { qos: 1, ...options });
  };
  return { raw, stop, m1: (atMs, changed = {}, qos = 1) => raw(topicOfM1, telemetryOfM1(atMs, changed), { qos }) };
}

import type { MqttClient } from 'mqtt';

/** Topic filters a packet: far below the largest packet that brokers take. */
const FILTERS_A_PACKET = 200;
/** Reason codes from here on are refusals (MQTT 5.0 section 3.9.3; 3.1.1 has only this one). */
const FIRST_REFUSAL = 0x80;

/** Subscribes with QoS 1. Null where all went well, else what did not. */
export async function subscribeAll(client: MqttClient, filters: readonly string[]): Promise<string | null> {
  const refused: string[] = [];
  for (let i = 0; i < filters.length; i += FILTERS_A_PACKET) {
    const some = filters.slice(i, i + FILTERS_A_PACKET);
    try {
      const granted = await client.subscribeAsync(some, { qos: 1 });
      refused.push(...granted.filter(({ qos }) => qos >= FIRST_REFUSAL).map(({ topic }) => topic));
    } catch {
      // Either the broker refused all of them, or the connection broke, which is seen by itself.
      refused.push(...some);
    }
  }
  if (refused.length === 0 || !client.connected) return null;
  return `the broker refused ${refused.length} of ${filters.length} subscriptions, such as ${refused[0] ?? ''}; let this user read them`;
}

/** Lets filters go. Where the connection breaks meanwhile, what still comes on them is refused as unknown and counted. */
export async function unsubscribeAll(client: MqttClient, filters: readonly string[]): Promise<void> {
  for (let i = 0; i < filters.length; i += FILTERS_A_PACKET) {
    if (!client.connected) return;
    await client.unsubscribeAsync(filters.slice(i, i + FILTERS_A_PACKET)).catch(brokenMeanwhile);
  }
}

const brokenMeanwhile = (): void => undefined;

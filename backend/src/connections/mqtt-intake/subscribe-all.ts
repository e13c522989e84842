import type { MqttClient } from 'mqtt';

/** Topic filters a packet: far below the largest packet that brokers take. */
const FILTERS_A_PACKET = 200;
/** Reason codes from here on are refusals (MQTT 5.0 section 3.9.3; 3.1.1 has only this one). */
const FIRST_REFUSAL = 0x80;

/** Subscribes with QoS 1. Gives the filters that the broker refused. */
export async function subscribeAll(client: MqttClient, filters: readonly string[]): Promise<readonly string[]> {
  const refused: string[] = [];
  for (let i = 0; i < filters.length; i += FILTERS_A_PACKET) {
    // What is asked of a client without a connection is answered never.
    if (!client.connected) break;
    const some = filters.slice(i, i + FILTERS_A_PACKET);
    const codes = await codesOf(client, some);
    refused.push(...some.filter((_, k) => (codes[k] ?? FIRST_REFUSAL) >= FIRST_REFUSAL));
  }
  return refused;
}

/** One code a filter, in their order; none where the broker gave none, which is no leave to hear anything. */
async function codesOf(client: MqttClient, filters: readonly string[]): Promise<readonly number[]> {
  try {
    return (await client.subscribeAsync([...filters], { qos: 1 })).map(({ qos }) => qos);
  } catch (error) {
    // One refusal fails the whole packet; what the broker said of each filter hangs on the fault.
    return error instanceof Error && 'packet' in error ? grantedOf(error.packet) : [];
  }
}

/** The connection may have broken instead, which is seen by itself: then there is no packet. */
function grantedOf(packet: unknown): readonly number[] {
  if (typeof packet !== 'object' || packet === null || !('granted' in packet) || !Array.isArray(packet.granted))
    return [];
  return packet.granted.filter((code) => typeof code === 'number');
}

/** Lets filters go. Where the connection breaks meanwhile, what still comes on them is refused as unknown and counted. */
export async function unsubscribeAll(client: MqttClient, filters: readonly string[]): Promise<void> {
  for (let i = 0; i < filters.length; i += FILTERS_A_PACKET) {
    if (!client.connected) return;
    await client.unsubscribeAsync(filters.slice(i, i + FILTERS_A_PACKET)).catch(brokenMeanwhile);
  }
}

const brokenMeanwhile = (): void => undefined;

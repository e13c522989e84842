import type { IntakeSettings } from '../connections/mqtt-intake/mqtt-intake';
import { statusTopic } from '../connections/mqtt-intake/status-topic';
import type { BrokerInUse } from './open-broker';
import type { BrokerUse } from './open-embedded-broker';

/** How the intake comes to the broker, and what it asks for there. */
export const intakeSettings = (
  { clientId, ownTopics, limits }: BrokerUse,
  site: { id: string; subscriptions: readonly string[] },
  broker: BrokerInUse,
): IntakeSettings => ({
  address: broker.address,
  tlsFiles: broker.tlsFiles,
  clientId,
  maximumPacketBytes: limits.packetBytes,
  statusTopic: statusTopic(site.id),
  subscriptions: site.subscriptions,
  ownTopics,
  note: broker.note,
  random: Math.random,
});

import type { ValueProvider } from '@nestjs/common';
import type { BrokerLimits } from '../connections/embedded-broker/broker-limits';
import { PacketLengths } from '../connections/embedded-broker/packet-lengths';
import { ListeningLink } from '../connections/mqtt-intake/listening-link';
import { MAPPING_DESK } from '../ports/mapping-desk';
import { RunnerMappingDesk, type MappingDeskParts } from '../runner/mapping/mapping-desk';
import type { ClosingStack } from './closing-stack';
import type { BrokerInUse } from './open-broker';

/** Help with names that are not ours, for the routes: over the same broker, on a connection that is opened when someone listens. */
export function openMappingDesk(
  { address, tlsFiles }: Pick<BrokerInUse, 'address' | 'tlsFiles'>,
  {
    clientId,
    limits: { packetBytes },
  }: { readonly clientId: string; readonly limits: Pick<BrokerLimits, 'packetBytes'> },
  parts: Omit<MappingDeskParts, 'listener'>,
  closing: ClosingStack,
): ValueProvider {
  const lengths = (): PacketLengths => new PacketLengths(packetBytes);
  const link = { address, tlsFiles, clientId: `${clientId}-listen`, random: Math.random, packetBytes, lengths };
  const desk = new RunnerMappingDesk({ ...parts, listener: new ListeningLink(link) });
  closing.add(() => desk.stop());
  return { provide: MAPPING_DESK, useValue: desk };
}

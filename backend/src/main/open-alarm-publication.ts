import { randomBytes } from 'node:crypto';
import { AlarmPublication } from '../connections/alarm-publication/alarm-publication';
import { alarmTopics } from '../connections/alarm-publication/alarm-topic';
import { RetainedLink } from '../connections/mqtt-intake/retained-link';
import type { AlarmNews, AlarmNotice } from '../ports/notice';
import type { ClosingStack } from './closing-stack';
import type { BrokerInUse } from './open-broker';

export interface PublicationUse {
  /** First levels of the topics; null: alarms are not told over MQTT. */
  readonly prefix: string | null;
  readonly site: string;
  readonly broker: Pick<BrokerInUse, 'address' | 'tlsFiles'>;
  /** Every alarm that stands or is set aside. */
  readonly standing: () => readonly AlarmNews[];
}

/** A filter of the topics that nobody but this program writes; null where it writes none. */
export const ownTopicsOf = (prefix: string | null, site: string): string | null =>
  prefix === null ? null : alarmTopics(prefix, site);

/** Who takes alarms out of the program. To be opened before what tells of them, so that it is closed after. */
export function openAlarmPublication(
  { prefix, site, broker, standing }: PublicationUse,
  closing: ClosingStack,
): { readonly takers: readonly AlarmNotice[]; readonly start: () => void } {
  if (prefix === null) return { takers: [], start: () => undefined };
  // Nothing of the session is kept, so a name drawn at each start will do; nobody can take it before us.
  const clientId = `ebbline${randomBytes(8).toString('hex')}`;
  const link = new RetainedLink({ address: broker.address, tlsFiles: broker.tlsFiles, clientId, random: Math.random });
  const publication = new AlarmPublication({ prefix, site, standing }, link);
  closing.add(() => publication.stop());
  return { takers: [publication], start: () => publication.start() };
}

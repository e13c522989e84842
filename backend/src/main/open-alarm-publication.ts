import { randomBytes } from 'node:crypto';
import { AlarmPublication } from '../connections/alarm-publication/alarm-publication';
import { alarmTopics } from '../connections/alarm-publication/alarm-topic';
import { forgetLeftTopics, keepTopics } from '../connections/alarm-publication/kept-topics';
import { LeftTopics } from '../connections/alarm-publication/left-topics';
import { RetainedLink } from '../connections/mqtt-intake/retained-link';
import type { AlarmNews, AlarmNotice } from '../ports/notice';
import type { ClosingStack } from './closing-stack';
import type { BrokerInUse } from './open-broker';

export interface PublicationUse {
  /** First levels of the topics; null: alarms are not told over MQTT. */
  readonly prefix: string | null;
  readonly site: string;
  readonly broker: Pick<BrokerInUse, 'address' | 'tlsFiles' | 'refused'>;
  /** Every alarm that stands or is set aside. */
  readonly standing: () => readonly AlarmNews[];
  /** Where it is kept under which topics alarms were told before. */
  readonly dataFolder: string;
}

/** A filter of the topics that nobody but this program writes; null where it writes none. */
export const ownTopicsOf = (prefix: string | null, site: string): string | null =>
  prefix === null ? null : alarmTopics(prefix, site);

/** Who takes alarms out of the program. To be opened before what tells of them, so that it is closed after. */
export function openAlarmPublication(
  { prefix, site, broker, standing, dataFolder }: PublicationUse,
  closing: ClosingStack,
): { readonly takers: readonly AlarmNotice[]; readonly start: () => void } {
  const now = ownTopicsOf(prefix, site);
  // Our own broker forgets with the program; what is left at another one waits until that is in use again.
  const known = broker.refused === null ? keepTopics(dataFolder, now).left : [];
  const left = known.map((filter) => new LeftTopics(filter, linkTo(broker)));
  const clear = (): void => left.forEach((one) => one.start());
  closing.add(async () => {
    const reached = await Promise.all(left.map((one) => one.stop()));
    if (left.length > 0 && reached.every((one) => one)) forgetLeftTopics(dataFolder, now);
  });
  if (prefix === null) return { takers: [], start: clear };
  const publication = new AlarmPublication({ prefix, site, standing }, linkTo(broker));
  closing.add(() => publication.stop());
  return {
    takers: [publication],
    start() {
      clear();
      publication.start();
    },
  };
}

/** Nothing of the session is kept, so a name drawn at each start will do; nobody can take it before us. */
const linkTo = ({ address, tlsFiles }: PublicationUse['broker']): RetainedLink =>
  new RetainedLink({
    address,
    tlsFiles,
    clientId: `ebbline${randomBytes(8).toString('hex')}`,
    random: Math.random,
  });

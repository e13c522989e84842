import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { createPeople, type KeptPeople } from '../connections/people/create-people';
import { peopleFile } from '../connections/people/people-database';
import type { AlarmJournal } from '../ports/alarm-journal';
import type { Audit } from '../ports/audit';
import type { Clock } from '../ports/clock';
import type { Ticker } from '../ports/ticker';
import { AuditInJournal } from '../runner/audit-in-journal';
import type { ClosingStack } from './closing-stack';
import { StartFault } from './start-fault';

export interface PeoplePlace {
  readonly dataFolder: string;
  readonly journal: AlarmJournal;
  readonly clock: Clock;
  readonly ticker: Ticker;
  /** Whether one click signs in: on the demo site, bound to loopback, without a proxy before it. */
  readonly demo: boolean;
  readonly report: (fault: unknown) => void;
}

const tendEveryMs = 60_000;

/** Opens people.db, and the audit that stands in the journal; both are closed before the journal is. */
export function openPeople(place: PeoplePlace, closing: ClosingStack): { people: KeptPeople; audit: Audit } {
  const { dataFolder, journal, clock, ticker, demo, report } = place;
  const audit = new AuditInJournal(journal, clock);
  const following = audit.follow(ticker);
  closing.add(() => following.stop());
  const people = opened({ path: join(dataFolder, peopleFile), audit, clock, random: randomBytes, demo, report });
  closing.add(() => people.close());
  const tending = ticker.every(tendEveryMs, () => people.tend());
  closing.add(() => tending.stop());
  return { people, audit };
}

function opened(options: Parameters<typeof createPeople>[0]): KeptPeople {
  try {
    return createPeople(options);
  } catch (error) {
    if (error instanceof CodedError && error.code.startsWith('PEOPLE_')) throw new StartFault([error.message]);
    throw error;
  }
}

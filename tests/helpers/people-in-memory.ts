import { randomBytes } from 'node:crypto';
import { createPeople, type KeptPeople } from '../../backend/src/connections/people/create-people';
import type { Audit, AuditEntry } from '../../backend/src/ports/audit';
import type { Clock } from '../../backend/src/ports/clock';
import type { BegunSession } from '../../backend/src/ports/people';
import { ManualClock } from '@ebbline/shared/clock/manual-clock';

/** Hashes that cost next to nothing: RFC 9106 section 3.1 allows no less memory. */
export const cheapHashes = { memoryKib: 8, passes: 1, lanes: 1 } as const;

/** What was written of people, in order; refuses where it is told to. */
export class ListedAudit implements Audit {
  readonly entries: AuditEntry[] = [];
  refuses = false;

  write(entry: AuditEntry): boolean {
    if (!this.refuses) this.entries.push(entry);
    return !this.refuses;
  }

  causes(): string[] {
    return this.entries.map(({ cause }) => cause);
  }
}

/** The real store without a file, with cheap hashes: for tests of what stands before it. */
export function peopleInMemory(
  options: { readonly demo?: boolean; readonly clock?: Clock; readonly audit?: Audit; readonly path?: string } = {},
): KeptPeople {
  const { demo = false, clock = new ManualClock(Date.UTC(2026, 0, 5, 6)), audit = new ListedAudit() } = options;
  return createPeople({
    ...{ path: options.path ?? ':memory:', audit, clock, random: randomBytes, demo, cost: cheapHashes },
    report: (fault) => {
      throw fault;
    },
  });
}

/** Sets up the first admin under a name. */
export async function firstAdmin(people: KeptPeople, name = 'Ada'): Promise<BegunSession> {
  const begun = await people.setUp({ link: people.firstLink() ?? '', name, password: goodPassword }, station);
  if (!begun.ok) throw new Error(begun.fault.message);
  return begun.value;
}

export const goodPassword = 'kettle under nine willows';
export const station = '127.0.0.1';

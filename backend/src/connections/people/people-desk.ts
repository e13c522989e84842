import type { BackOffBook } from '../../access/back-off-book';
import type { Audit } from '../../ports/audit';
import type { Clock } from '../../ports/clock';
import type { PeopleFault } from '../../ports/people';
import type { Result } from '@ebbline/shared/errors/result';
import type { Hashing } from './hashing';
import type { PeopleBook } from './people-book';
import type { RandomBytes } from './secret';

/** What every act on people works with. */
export interface PeopleDesk {
  readonly book: PeopleBook;
  readonly audit: Audit;
  readonly hashing: Hashing;
  readonly backOff: BackOffBook;
  readonly clock: Clock;
  readonly random: RandomBytes;
  /** Whether one click signs in. */
  readonly demo: boolean;
}

export type Answer<Value> = Result<Value, PeopleFault>;

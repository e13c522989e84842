import { BackOffBook } from '../../access/back-off-book';
import type { Audit } from '../../ports/audit';
import type { Clock } from '../../ports/clock';
import type { People } from '../../ports/people';
import { isInForce, sessionOf, tokenOf } from './callers';
import { changePassword } from './change-password';
import { endSession } from './end-session';
import { Hashing } from './hashing';
import { addPerson, changePerson, doer, linkFor } from './manage-people';
import { addToken, withdrawToken } from './manage-tokens';
import { usualCost, type HashCost } from './password-hash';
import { PeopleBook } from './people-book';
import type { PeopleDesk } from './people-desk';
import { hasAdmin, personRow, tokenRow } from './people-list';
import { digestOf, newSecret, type RandomBytes } from './secret';
import { setUp } from './set-up';
import { signIn, signInDemo } from './sign-in';
import { signInForeign } from './sign-in-foreign';
import { PeopleTending } from './tend-people';

export interface PeopleOptions {
  /** The file, or `:memory:`. */
  readonly path: string;
  readonly audit: Audit;
  readonly clock: Clock;
  /** Bytes that nobody foresees: `node:crypto` `randomBytes` in the program. */
  readonly random: RandomBytes;
  /** Whether one click signs in: on the demo site, bound to loopback, without a proxy before it. */
  readonly demo: boolean;
  /** What the disk refuses, for the error output; the one who asked gets PEOPLE_UNAVAILABLE. */
  readonly report?: (fault: unknown) => void;
  readonly cost?: HashCost;
}

export interface KeptPeople extends People {
  /** To be called once a minute. */
  tend(): void;
  /** What the disk last refused, until it takes something again; null where all is well. */
  trouble(): string | null;
  close(): void;
}

/**
 * People, sessions and tokens in one file.
 * @throws CodedError PEOPLE_OPEN_FAILED, PEOPLE_SCHEMA_NEWER, PEOPLE_DAMAGED
 */
export function createPeople(options: PeopleOptions): KeptPeople {
  const { path, audit, clock, random, demo, report = () => undefined, cost = usualCost } = options;
  const book = new PeopleBook(path, audit, report);
  const hashing = new Hashing(cost);
  const desk: PeopleDesk = { book, audit, hashing, backOff: new BackOffBook(), clock, random, demo };
  const tending = new PeopleTending(desk);
  /** Null once it was used: it is good once, whoever comes and goes later. */
  let first: string | null = newSecret(random);
  return {
    setUpNeeded: () => !hasAdmin(book),
    firstLink: () => (hasAdmin(book) ? null : first),
    setUp: async (asked, station) => {
      const answer = await setUp(desk, asked, first === null ? null : digestOf(first), station);
      if (answer.ok && asked.link === first) first = null;
      return answer;
    },
    signIn: (asked, station) => signIn(desk, asked, station),
    signInDemo: (name, station) => Promise.resolve(signInDemo(desk, name, station)),
    signInForeign: (who, station) => Promise.resolve(signInForeign(desk, who, station)),
    sessionOf: (secret, acts) => sessionOf(desk, secret, acts),
    tokenOf: (secret) => tokenOf(desk, secret),
    isInForce: (caller) => isInForce(desk, caller),
    endSession: (caller, everywhere, station) => Promise.resolve(endSession(desk, caller, everywhere, station)),
    changePassword: (caller, asked, station) => changePassword(desk, caller, asked, station),
    people: () => [...book.people.values()].map(personRow),
    addPerson: (asked, caller, station) => Promise.resolve(addPerson(desk, asked, doer(caller, station))),
    changePerson: (id, asked, caller, station) => Promise.resolve(changePerson(desk, id, asked, doer(caller, station))),
    linkFor: (id, reason, caller, station) => Promise.resolve(linkFor(desk, id, reason, doer(caller, station))),
    tokens: () => [...book.tokens.values()].map(tokenRow),
    addToken: (asked, caller, station) => Promise.resolve(addToken(desk, asked, doer(caller, station))),
    withdrawToken: (id, reason, caller, station) =>
      Promise.resolve(withdrawToken(desk, id, reason, doer(caller, station))),
    tend: () => tending.tend(),
    trouble: () => book.trouble(),
    close: () => {
      tending.keepTimes();
      book.close();
    },
  };
}

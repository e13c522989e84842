import type { Right, Role, SessionState } from '@ebbline/shared/contract/people';
import { roles } from '@ebbline/shared/contract/people';
import { rightsOfRole } from '../../access/rights-of-role';
import type { Caller } from '../../ports/people';

export interface Ways {
  readonly demo: boolean;
  readonly openIdLabel: string | null;
  readonly setUpNeeded: boolean;
}

/** What a screen is told of who looks at it. */
export function sessionState(caller: Caller | null, { demo, openIdLabel, setUpNeeded }: Ways): SessionState {
  const idleEndsMs = caller?.idleEndsMs ?? null;
  return {
    person: caller === null ? null : personOf(caller),
    csrf: caller?.csrf ?? null,
    endsAt: caller === null ? null : iso(caller.endsMs),
    idleEndsAt: idleEndsMs === null ? null : iso(idleEndsMs),
    ways: { password: true, demo, openId: openIdLabel === null ? null : { label: openIdLabel } },
    setUpNeeded,
  };
}

const personOf = ({ name, role, rights, by }: Caller): SessionState['person'] => ({
  name,
  role: role ?? roleWithin(rights),
  rights: [...rights],
  by,
});

/** Tokens have rights and no role: the highest that may do no more than they. */
const roleWithin = (rights: readonly Right[]): Role =>
  roles.filter((role) => rightsOfRole[role].every((right) => rights.includes(right))).at(-1) ?? 'viewer';

const iso = (ms: number): string => new Date(ms).toISOString();

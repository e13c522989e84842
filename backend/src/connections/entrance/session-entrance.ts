import { timingSafeEqual } from 'node:crypto';
import type { Right } from '@ebbline/shared/contract/people';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { rightsOfRole } from '../../access/rights-of-role';
import type { Clock } from '../../ports/clock';
import type { Edge, EdgeRequest } from '../../ports/edge';
import type { Entrance, EntranceFault, Shown, Visitor } from '../../ports/entrance';
import type { BegunSession, Caller, People } from '../../ports/people';
import { bearerToken } from './bearer-token';
import { readSessionCookie, writeSessionCookie } from './session-cookie';

type Known = Pick<People, 'sessionOf' | 'tokenOf' | 'isInForce'>;

/** Lets in by the cookie of a session or by a bearer token. */
export class SessionEntrance implements Entrance {
  readonly demo: boolean;

  /** @param isDemo whether the site is the demo's; a program that others reach gives nobody unsigned anything */
  constructor(
    private readonly people: Known,
    private readonly edge: Pick<Edge, 'exposed' | 'stationOf' | 'isSecure'>,
    private readonly clock: Pick<Clock, 'wallMs'>,
    isDemo: boolean,
  ) {
    this.demo = isDemo && !edge.exposed;
  }

  visitorOf(request: EdgeRequest, { token, acts }: Shown): Result<Visitor, EntranceFault> {
    const shown = token ?? bearerToken(one(request.headers['authorization']));
    if (shown === null) return ok(this.visitor(request, this.byCookie(request, acts)));
    const caller = shown === '' ? null : this.people.tokenOf(shown);
    return caller === null ? fail(tokenRefused) : ok(this.visitor(request, caller));
  }

  refusalOf({ caller, rights }: Visitor, right: Right, csrf: string | null | undefined): EntranceFault | null {
    if (!rights.includes(right)) return caller === null ? signInNeeded : missing(right, caller);
    if (csrf === undefined || caller === null || caller.csrf === null) return null;
    return csrf !== null && isSame(csrf, caller.csrf) ? null : csrfMissing;
  }

  isInForce({ caller, rights }: Visitor): boolean {
    return caller === null ? rights.length > 0 : this.people.isInForce(caller);
  }

  cookieOf(begun: BegunSession | null, request: EdgeRequest): string {
    const lastsS = begun === null ? 0 : (begun.caller.endsMs - this.clock.wallMs()) / 1000;
    return writeSessionCookie(begun?.secret ?? '', lastsS, this.edge.isSecure(request));
  }

  private byCookie(request: EdgeRequest, acts: boolean): Caller | null {
    const secret = readSessionCookie(one(request.headers['cookie']), this.edge.isSecure(request));
    return secret === null ? null : this.people.sessionOf(secret, acts);
  }

  private visitor(request: EdgeRequest, caller: Caller | null): Visitor {
    const rights = caller?.rights ?? (this.demo ? rightsOfRole.viewer : []);
    return { caller, rights, station: this.edge.stationOf(request) };
  }
}

const signInNeeded: EntranceFault = {
  code: 'SIGN_IN_NEEDED',
  message: 'Sign in first: open the screens, or send a token as Authorization: Bearer.',
};
const tokenRefused: EntranceFault = {
  code: 'TOKEN_REFUSED',
  message: 'This token is none, is out of time, or was withdrawn. Ask an admin for a new one.',
};
const csrfMissing: EntranceFault = {
  code: 'CSRF_MISSING',
  message: 'Send the header X-Ebbline-Csrf with the value that GET /api/session gives; load the page again.',
};

const missing = (right: Right, { role }: Caller): EntranceFault => ({
  code: 'RIGHT_MISSING',
  message: `This needs the right ${right}, which ${role === null ? 'this token' : `the role ${role}`} does not have. Ask an admin.`,
});

const one = (header: string | readonly string[] | undefined): string | undefined =>
  typeof header === 'string' ? header : header?.[0];

function isSame(given: string, kept: string): boolean {
  const [a, b] = [Buffer.from(given), Buffer.from(kept)];
  return a.length === b.length && timingSafeEqual(a, b);
}

import type { Right } from '@ebbline/shared/contract/people';
import type { Result } from '@ebbline/shared/errors/result';
import type { EdgeRequest } from './edge';
import type { BegunSession, Caller } from './people';

/** Who stands at the door. `caller` null: nobody signed in, who may look on a demo site at this machine. */
export interface Visitor {
  readonly caller: Caller | null;
  /** May be more than those of the caller: none where nobody is signed in and nobody unsigned is given anything. */
  readonly rights: readonly Right[];
  readonly station: string;
}

export const entranceFaults = ['SIGN_IN_NEEDED', 'TOKEN_REFUSED', 'RIGHT_MISSING', 'CSRF_MISSING'] as const;
export interface EntranceFault {
  readonly code: (typeof entranceFaults)[number];
  readonly message: string;
}

/** What a request, or the handshake of a socket, shows beside its headers. */
export interface Shown {
  /** In place of `Authorization: Bearer`, which a browser's socket can't send. */
  readonly token: string | null;
  /** A person did something just now: the end by idling moves. */
  readonly acts: boolean;
}

/** Tells who asks, and whether they may. */
export interface Entrance {
  /** By bearer token, else by cookie. TOKEN_REFUSED: a token was shown that is none; a cookie that is over counts as none. */
  visitorOf(request: EdgeRequest, shown: Shown): Result<Visitor, EntranceFault>;
  /**
   * Null where the visitor may do what asks for this right.
   * @param csrf what the page sent along; undefined where nothing changes by the request, so that it needs none
   */
  refusalOf(visitor: Visitor, right: Right, csrf: string | null | undefined): EntranceFault | null;
  /** Whether the visitor is still let in; for sockets that stay open. */
  isInForce(visitor: Visitor): boolean;
  /** Whether anybody may sign in by a click: on the demo site, by who sits at this machine. */
  readonly demo: boolean;
  /** Value of a `Set-Cookie` header that begins, or with null ends, the session of a browser. */
  cookieOf(begun: BegunSession | null, request: EdgeRequest): string;
}

export const ENTRANCE = Symbol('Entrance');

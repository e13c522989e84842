import type { Result } from '@ebbline/shared/errors/result';
import type { Caller, ForeignIdentity } from './people';

export const openIdFaults = [
  /** No provider is set. */
  'OPEN_ID_ABSENT',
  /** The provider does not answer; sign in by password. */
  'OPEN_ID_UNREACHABLE',
  /** No sign-in was begun in this browser, it took too long, or its answer came a second time. */
  'OPEN_ID_NOT_BEGUN',
  /** The provider said no, or what it said does not hold. */
  'OPEN_ID_REFUSED',
  /** Someone known there, to whom no role was given here. */
  'OPEN_ID_NO_ROLE',
] as const;
export interface OpenIdFault {
  readonly code: (typeof openIdFaults)[number];
  readonly message: string;
}

export interface BegunOpenId {
  /** Where the browser goes to sign in. */
  readonly address: string;
  /** For a short cookie (HttpOnly, SameSite=Lax) of the browser that begins; it must come back with it. */
  readonly secret: string;
  readonly secretEndsSeconds: number;
}

/** How the browser reaches this program; the provider sends it back the same way. */
export interface Reached {
  readonly secure: boolean;
  /** Host and port, checked by the edge. */
  readonly host: string;
}

export interface FinishedOpenId {
  readonly who: ForeignIdentity;
  /** Who was signed in with that browser when it began. */
  readonly before: Caller | null;
}

/** Sign-in at an identity provider: authorization code flow with PKCE, state and nonce. */
export interface OpenId {
  /** What to write on the button; null: no provider is set. */
  label(): string | null;
  begin(reached: Reached, before: Caller | null): Promise<Result<BegunOpenId, OpenIdFault>>;
  /**
   * @param query what follows the ? of the address at which the browser came back
   * @param secret of the cookie; null where none came
   */
  finish(query: string, secret: string | null): Promise<Result<FinishedOpenId, OpenIdFault>>;
}

export const OPEN_ID = Symbol('OpenId');

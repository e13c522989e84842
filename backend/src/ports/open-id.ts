import type { Result } from '@ebbline/shared/errors/result';
import type { ForeignIdentity } from './people';

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

/** Sign-in at an identity provider: authorization code flow with PKCE, state and nonce. */
export interface OpenId {
  /** What to write on the button; null: no provider is set. */
  label(): string | null;
  /** @param returnAddress of `/api/session/open-id/return`, as browsers reach it and as the provider knows it */
  begin(returnAddress: string): Promise<Result<BegunOpenId, OpenIdFault>>;
  /**
   * @param query what follows the ? of the address at which the browser came back
   * @param secret of the cookie; null where none came
   */
  finish(query: string, secret: string | null): Promise<Result<ForeignIdentity, OpenIdFault>>;
}

export const OPEN_ID = Symbol('OpenId');

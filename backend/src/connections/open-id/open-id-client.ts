import * as client from 'openid-client';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { BegunOpenId, FinishedOpenId, OpenId, OpenIdFault, Reached } from '../../ports/open-id';
import type { Caller } from '../../ports/people';
import { nameOfClaims, roleOfClaims, type Claims } from './identity-of-claims';
import { noRole, notBegun, refusal, saysNo, unreachable } from './open-id-faults';
import type { OpenIdSettings } from './open-id-settings';
import { Provider } from './provider';
import { attemptSeconds, SignInAttempts, type Attempt } from './sign-in-attempts';

/** Sign-in at the provider of the settings. The provider is first asked when someone signs in: a start never waits for it. */
export class OpenIdClient implements OpenId {
  readonly #provider: Provider;
  readonly #attempts = new SignInAttempts();

  constructor(
    private readonly settings: OpenIdSettings,
    private readonly nowMs: () => number,
  ) {
    this.#provider = new Provider(settings, nowMs);
  }

  label(): string {
    return new URL(this.settings.issuer).host;
  }

  async begin(reached: Reached, before: Caller | null): Promise<Result<BegunOpenId, OpenIdFault>> {
    const configuration = await this.#provider.configuration().catch(() => null);
    if (configuration === null) return fail(unreachable);
    const state = client.randomState();
    const returnAddress = this.#returnAddress(reached);
    const verifier = client.randomPKCECodeVerifier();
    const attempt = { returnAddress, verifier, nonce: client.randomNonce(), before };
    const address = client.buildAuthorizationUrl(configuration, {
      redirect_uri: returnAddress,
      scope: this.settings.scope,
      state,
      nonce: attempt.nonce,
      code_challenge: await client.calculatePKCECodeChallenge(attempt.verifier),
      code_challenge_method: 'S256',
    });
    const secret = this.#attempts.add(state, attempt, this.nowMs());
    return ok({ address: address.href, secret, secretEndsSeconds: attemptSeconds });
  }

  async finish(query: string, secret: string | null): Promise<Result<FinishedOpenId, OpenIdFault>> {
    const state = new URLSearchParams(query).get('state');
    const attempt = state === null || secret === null ? null : this.#attempts.take(state, secret, this.nowMs());
    if (state === null || attempt === null) return fail(notBegun);
    const no = saysNo(query);
    if (no !== null) return fail(no);
    const configuration = await this.#provider.configuration().catch(() => null);
    if (configuration === null) return fail(unreachable);
    try {
      const claims = await provenClaims(configuration, state, attempt, query, this.settings.claim);
      return this.#finished(claims, attempt);
    } catch (fault) {
      return fail(refusal(fault));
    }
  }

  /** As it is registered at the provider: of the public address, or of this machine for who sits at it. */
  #returnAddress({ secure, host }: Reached): string {
    const { publicUrl } = this.settings;
    const origin = secure && publicUrl !== null ? publicUrl : `${secure ? 'https' : 'http'}://${host}`;
    return `${origin}/api/session/open-id/return`;
  }

  #finished(claims: Claims & { readonly sub: string }, { before }: Attempt): Result<FinishedOpenId, OpenIdFault> {
    const { issuer, claim, roles } = this.settings;
    const role = roleOfClaims(claims, claim, roles);
    if (role === null) return fail(noRole);
    return ok({ who: { issuer, subject: claims.sub, name: nameOfClaims(claims, claims.sub), role }, before });
  }
}

/**
 * Changes the code into an ID token and checks it: issuer, audience, times, nonce, signature (OpenID Connect Core 1.0 section
 * 3.1.3.7). What it does not say is asked of the userinfo endpoint, whose answer must be of the same subject (section 5.3.2).
 * Throws what the library throws.
 */
async function provenClaims(
  configuration: client.Configuration,
  state: string,
  { returnAddress, verifier, nonce }: Attempt,
  query: string,
  claim: string,
): Promise<Claims & { readonly sub: string }> {
  const returned = new URL(returnAddress);
  returned.search = query;
  const tokens = await client.authorizationCodeGrant(configuration, returned, {
    expectedState: state,
    expectedNonce: nonce,
    pkceCodeVerifier: verifier,
    idTokenExpected: true,
  });
  const proven = tokens.claims();
  if (proven === undefined) throw new Error('the provider gave no ID token');
  const enough = Object.hasOwn(proven, claim) && (proven['name'] ?? proven['preferred_username']) !== undefined;
  if (enough || configuration.serverMetadata().userinfo_endpoint === undefined) return proven;
  const more = await client.fetchUserInfo(configuration, tokens.access_token, proven.sub);
  return { ...more, ...proven };
}

import * as client from 'openid-client';
import type { OpenIdSettings } from './open-id-settings';

/** What the provider says of itself is asked again after so long, ms: keys and addresses change seldom. */
const askAgainMs = 3_600_000;
const patienceSeconds = 10;
/** Clocks of two machines may differ by so much. */
const clockToleranceSeconds = 30;

/** The provider as it describes itself (OpenID Connect Discovery 1.0), asked when it is first needed and kept for an hour. */
export class Provider {
  #known: { readonly configuration: Promise<client.Configuration>; readonly sinceMs: number } | null = null;

  constructor(
    private readonly settings: OpenIdSettings,
    private readonly nowMs: () => number,
  ) {}

  /** Throws what the library throws where the provider can't be reached, or names itself otherwise. */
  configuration(): Promise<client.Configuration> {
    const nowMs = this.nowMs();
    if (this.#known !== null && Math.abs(nowMs - this.#known.sinceMs) < askAgainMs) return this.#known.configuration;
    const known = { configuration: this.#discover(), sinceMs: nowMs };
    this.#known = known;
    known.configuration.catch(() => {
      if (this.#known === known) this.#known = null;
    });
    return known.configuration;
  }

  async #discover(): Promise<client.Configuration> {
    const { issuer, clientId } = this.settings;
    const metadata = { [client.clockTolerance]: clockToleranceSeconds };
    const configuration = await client.discovery(new URL(issuer), clientId, metadata, this.#proof(), {
      timeout: patienceSeconds,
      // The settings let no http in but that of this machine.
      // eslint-disable-next-line @typescript-eslint/no-deprecated -- so marked only to make it stand out
      execute: new URL(issuer).protocol === 'http:' ? [client.allowInsecureRequests] : [],
    });
    // Beside the transport, the signature of what is said of a person is checked (OpenID Connect Core 1.0 section 3.1.3.7, 6).
    client.enableNonRepudiationChecks(configuration);
    configuration.timeout = patienceSeconds;
    return configuration;
  }

  /** In the header (RFC 6749 section 2.3.1), unless the provider takes it in the body alone. */
  #proof(): client.ClientAuth {
    const { clientSecret } = this.settings;
    if (clientSecret === null) return client.None();
    const basic = client.ClientSecretBasic(clientSecret);
    const post = client.ClientSecretPost(clientSecret);
    return (server, ...more) => {
      const taken = server.token_endpoint_auth_methods_supported ?? ['client_secret_basic'];
      (taken.includes('client_secret_basic') ? basic : post)(server, ...more);
    };
  }
}

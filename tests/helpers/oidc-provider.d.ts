/** What the tests use of the package, which brings no types. */
declare module 'oidc-provider' {
  import type { IncomingMessage, ServerResponse } from 'node:http';

  export interface Account {
    readonly accountId: string;
    claims(): Record<string, unknown> & { readonly sub: string };
  }
  export interface Configuration {
    readonly clients: readonly Record<string, unknown>[];
    readonly claims: Readonly<Record<string, readonly string[]>>;
    readonly scopes: readonly string[];
    readonly conformIdTokenClaims: boolean;
    readonly cookies: { readonly keys: readonly string[] };
    readonly ttl: Readonly<Record<string, number>>;
    readonly pkce: { readonly required: () => boolean };
    findAccount(context: unknown, id: string): Account;
  }
  export class Provider {
    constructor(issuer: string, configuration: Configuration);
    callback(): (request: IncomingMessage, response: ServerResponse) => void;
  }
}

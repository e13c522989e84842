import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Provider } from 'oidc-provider';

export interface OpenIdProvider {
  readonly issuer: string;
  /** Signs in as `login` in a browser of its own and says where the provider sends it back to. */
  signIn(address: string, login: string): Promise<URL>;
  stop(): Promise<void>;
}

export interface OpenIdProviderOptions {
  readonly clientId: string;
  readonly clientSecret: string;
  readonly returnAddress: string;
  /** What it says of each login; who is not named is known by nothing but the login. */
  readonly people: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
  /** False: the ID token itself carries the claims. True, as the standard has it: they are asked of userinfo. */
  readonly byUserInfo?: boolean;
}

/** A small certified provider of OpenID Connect on 127.0.0.1, for this test run alone: any password will do. */
export async function startOpenIdProvider(options: OpenIdProviderOptions): Promise<OpenIdProvider> {
  let answer: ((request: IncomingMessage, response: ServerResponse) => void) | null = null;
  const server = createServer((request, response) => answer?.(request, response));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const issuer = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const provider = new Provider(issuer, {
    clients: [
      { client_id: options.clientId, client_secret: options.clientSecret, redirect_uris: [options.returnAddress] },
    ],
    claims: { openid: ['sub'], profile: ['name', 'preferred_username', 'groups'], email: ['email', 'email_verified'] },
    scopes: ['openid', 'profile', 'email'],
    conformIdTokenClaims: options.byUserInfo ?? true,
    cookies: { keys: ['of this test run alone'] },
    ttl: { AccessToken: 60, AuthorizationCode: 60, IdToken: 60, Grant: 300, Interaction: 300, Session: 300 },
    pkce: { required: () => true },
    findAccount: (_, accountId) => ({
      accountId,
      claims: () => ({ ...options.people[accountId], sub: accountId }),
    }),
  });
  answer = provider.callback();
  return {
    issuer,
    signIn: (address, login) => visit(address, login, options.returnAddress),
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

/** Goes where it is sent, fills in the forms of the provider, and stops before it would leave it. */
async function visit(address: string, login: string, returnAddress: string): Promise<URL> {
  const cookies = new Map<string, string>();
  const ask = async (to: URL, form: URLSearchParams | null): Promise<Response> => {
    const cookie = [...cookies].map(([name, value]) => `${name}=${value}`).join('; ');
    const reply = await fetch(to, {
      redirect: 'manual',
      headers: { cookie },
      ...(form === null ? {} : { method: 'POST', body: form }),
    });
    for (const line of reply.headers.getSetCookie()) {
      const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(line) ?? [];
      cookies.set(name, value);
    }
    return reply;
  };
  let at = new URL(address);
  let reply = await ask(at, null);
  for (let step = 0; step < 20; step++) {
    const location = reply.headers.get('location');
    if (location !== null) {
      at = new URL(location, at);
      if (at.href.startsWith(returnAddress)) return at;
      reply = await ask(at, null);
      continue;
    }
    const page = await reply.text();
    const [, action] = /<form[^>]* action="([^"]+)"/.exec(page) ?? [];
    const [, prompt] = /name="prompt" value="(\w+)"/.exec(page) ?? [];
    if (action === undefined || prompt === undefined) throw new Error(`${at.href}: ${reply.status} ${page}`);
    at = new URL(action, at);
    reply = await ask(at, new URLSearchParams({ prompt, ...(prompt === 'login' ? { login, password: 'any' } : {}) }));
  }
  throw new Error('the provider sends from page to page without end');
}

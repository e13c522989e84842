import { createSign, generateKeyPairSync, type KeyObject } from 'node:crypto';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

/** What is wrong with what the provider says of a person; an honest one changes nothing. */
export interface Forgery {
  readonly claims?: (claims: Record<string, unknown>, nowSeconds: number) => Record<string, unknown>;
  readonly header?: Readonly<Record<string, unknown>>;
  readonly key?: KeyObject;
  readonly withoutIdToken?: boolean;
  readonly userInfo?: Readonly<Record<string, unknown>>;
  /** What it says of itself in place of the truth. */
  readonly about?: Readonly<Record<string, unknown>>;
}

export interface ForgingProvider {
  readonly issuer: string;
  /** Where a browser would be sent back to, with any code. */
  signIn(address: string, more?: Readonly<Record<string, string>>): URL;
  stop(): Promise<void>;
}

const own = generateKeyPairSync('rsa', { modulusLength: 2048 });
export const strangersKey = generateKeyPairSync('rsa', { modulusLength: 2048 }).privateKey;

/** A provider on 127.0.0.1 that says what it is told to: a kept one can't be brought to lie. */
export async function startForgingProvider(forgery: Forgery): Promise<ForgingProvider> {
  let nonce = '';
  const server = createServer((request, response) => {
    const answer = (body: unknown): void => {
      response.setHeader('content-type', 'application/json');
      response.end(JSON.stringify(body));
    };
    request.resume();
    const { pathname } = new URL(request.url ?? '', issuer);
    if (pathname === '/.well-known/openid-configuration') answer({ ...about(issuer), ...forgery.about });
    else if (pathname === '/keys')
      answer({ keys: [{ ...own.publicKey.export({ format: 'jwk' }), kid: 'own', alg: 'RS256' }] });
    else if (pathname === '/me') answer(forgery.userInfo ?? {});
    else answer(tokens(issuer, nonce, forgery));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const issuer = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return {
    issuer,
    signIn(address, more = {}) {
      const asked = new URL(address).searchParams;
      nonce = asked.get('nonce') ?? '';
      const back = new URL(asked.get('redirect_uri') ?? '');
      back.search = new URLSearchParams({ code: 'any', state: asked.get('state') ?? '', ...more }).toString();
      return back;
    },
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

const about = (issuer: string) => ({
  issuer,
  authorization_endpoint: `${issuer}/authorize`,
  token_endpoint: `${issuer}/token`,
  userinfo_endpoint: `${issuer}/me`,
  jwks_uri: `${issuer}/keys`,
  response_types_supported: ['code'],
  subject_types_supported: ['public'],
  id_token_signing_alg_values_supported: ['RS256'],
});

function tokens(issuer: string, nonce: string, { claims, header, key, withoutIdToken }: Forgery) {
  const now = Math.floor(Date.now() / 1000);
  const honest = {
    iss: issuer,
    sub: 'ines',
    aud: 'ebbline',
    iat: now,
    exp: now + 60,
    nonce,
    name: 'Ines',
    groups: ['all'],
  };
  const text = [{ alg: 'RS256', kid: 'own', ...header }, claims?.(honest, now) ?? honest].map(encoded).join('.');
  const signature = createSign('RSA-SHA256')
    .update(text)
    .sign(key ?? own.privateKey, 'base64url');
  const idToken = withoutIdToken === true ? {} : { id_token: `${text}.${header?.['alg'] === 'none' ? '' : signature}` };
  return { access_token: 'any', token_type: 'Bearer', expires_in: 60, ...idToken };
}

const encoded = (part: unknown): string => Buffer.from(JSON.stringify(part)).toString('base64url');

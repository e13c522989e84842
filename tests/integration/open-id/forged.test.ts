import { describe, expect, it } from 'vitest';
import { OpenIdClient } from '../../../backend/src/connections/open-id/open-id-client';
import { stopAfterEach } from '../../helpers/stop-after';
import { type Forgery, startForgingProvider, strangersKey } from './forging-provider';

const keep = stopAfterEach();

/** What becomes of a sign-in at a provider that lies so. */
async function signedIn(forgery: Forgery, back: Readonly<Record<string, string>> = {}) {
  const provider = keep(await startForgingProvider(forgery));
  const roles = [{ value: 'all', role: 'admin' as const }];
  const settings = {
    issuer: provider.issuer,
    clientId: 'ebbline',
    clientSecret: null,
    scope: 'openid',
    claim: 'groups',
    roles,
    publicUrl: null,
  };
  const openId = new OpenIdClient(settings, Date.now);
  const begin = await openId.begin({ secure: false, host: '127.0.0.1:8080' }, null);
  if (!begin.ok) return begin;
  return openId.finish(provider.signIn(begin.value.address, back).search, begin.value.secret);
}

const refused = { ok: false, fault: { code: 'OPEN_ID_REFUSED' } };
const changed =
  (change: Readonly<Record<string, unknown>>): NonNullable<Forgery['claims']> =>
  (claims) => ({ ...claims, ...change });

describe('what an identity provider says of a person', () => {
  it('lets in, where all of it holds', async () => {
    expect(await signedIn({})).toMatchObject({
      ok: true,
      value: { who: { subject: 'ines', name: 'Ines', role: 'admin' } },
    });
  });

  // OpenID Connect Core 1.0 section 3.1.3.7, by its numbers.
  it.each<[string, Forgery]>([
    ['comes from another issuer (2)', { claims: changed({ iss: 'http://127.0.0.1:1' }) }],
    ['is for another client (3)', { claims: changed({ aud: 'another' }) }],
    ['was asked for by another client (5)', { claims: changed({ aud: ['ebbline', 'another'], azp: 'another' }) }],
    ['is signed by a stranger (6)', { key: strangersKey }],
    ['is not signed at all (6)', { header: { alg: 'none' } }],
    ['is signed by a key that the provider does not name (6)', { header: { kid: 'other' } }],
    ['is signed in a way that was not agreed (7)', { header: { alg: 'HS256' } }],
    ['has expired (9)', { claims: (claims, now) => ({ ...claims, iat: now - 600, exp: now - 60 }) }],
    ['never expires (9)', { claims: changed({ exp: undefined }) }],
    ['does not say since when (10)', { claims: changed({ iat: undefined }) }],
    ['answers another sign-in (11)', { claims: changed({ nonce: 'of-another' }) }],
    ['answers no sign-in (11)', { claims: changed({ nonce: undefined }) }],
    ['is of nobody', { claims: changed({ sub: undefined }) }],
    ['is missing', { withoutIdToken: true }],
    [
      'is of one person in the ID token and of another in userinfo (section 5.3.2)',
      { claims: changed({ groups: undefined }), userInfo: { sub: 'omar', groups: ['all'] } },
    ],
  ])('is refused where it %s', async (_, forgery) => {
    expect(await signedIn(forgery)).toMatchObject(refused);
  });

  it('is not taken from userinfo over what was signed', async () => {
    const forgery = {
      claims: changed({ name: undefined, groups: ['none'] }),
      userInfo: { sub: 'ines', groups: ['all'] },
    };
    expect(await signedIn(forgery)).toMatchObject({ ok: false, fault: { code: 'OPEN_ID_NO_ROLE' } });
  });

  it('is refused where the answer names another provider (RFC 9207 section 2.4)', async () => {
    const about = { authorization_response_iss_parameter_supported: true };
    expect(await signedIn({ about }, { iss: 'http://127.0.0.1:1' })).toMatchObject(refused);
    expect(await signedIn({ about })).toMatchObject(refused);
  });

  it('is not asked for where the provider gives itself another name', async () => {
    expect(await signedIn({ about: { issuer: 'http://127.0.0.1:1' } })).toMatchObject({
      ok: false,
      fault: { code: 'OPEN_ID_UNREACHABLE' },
    });
  });
});

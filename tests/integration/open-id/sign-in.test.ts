import { beforeEach, describe, expect, it, vi } from 'vitest';
import { OpenIdClient } from '../../../backend/src/connections/open-id/open-id-client';
import type { OpenIdSettings } from '../../../backend/src/connections/open-id/open-id-settings';
import { type OpenIdProvider, startOpenIdProvider } from '../../helpers/open-id-provider';
import { stopAfterEach } from '../../helpers/stop-after';

const keep = stopAfterEach();
const reached = { secure: false, host: '127.0.0.1:8080' };
const returnAddress = 'http://127.0.0.1:8080/api/session/open-id/return';
const client = { clientId: 'ebbline', clientSecret: 'kept%by:both & no one else' };
const people = {
  ines: { name: 'Ines Vidal', groups: ['everybody', 'night-shift'], email: 'ines@hall.example', email_verified: true },
  omar: { name: 'Omar Lindt', groups: ['night-shift', 'plant'] },
  mail: { email: 'mia@hall.example', email_verified: false, groups: 'plant' },
  guest: { name: 'Guest', groups: ['everybody'] },
};

let provider: OpenIdProvider;
let nowMs: number;
beforeEach(async () => {
  // The provider says at each start that it is one for tests only.
  vi.spyOn(console, 'warn').mockReturnValue();
  provider = keep(await startOpenIdProvider({ ...client, returnAddress, people }));
  nowMs = Date.now();
});

const settings = (changes: Partial<OpenIdSettings> = {}): OpenIdSettings => ({
  issuer: provider.issuer,
  ...client,
  scope: 'openid profile email',
  claim: 'groups',
  roles: [
    { value: 'night-shift', role: 'operator' },
    { value: 'plant', role: 'engineer' },
  ],
  publicUrl: null,
  ...changes,
});
const ebbline = (changes: Partial<OpenIdSettings> = {}): OpenIdClient =>
  new OpenIdClient(settings(changes), () => nowMs);

interface Begun {
  readonly address: string;
  readonly secret: string;
}

async function begun(openId: OpenIdClient): Promise<Begun> {
  const begin = await openId.begin(reached, null);
  if (!begin.ok) throw new Error(begin.fault.message);
  return begin.value;
}

/** The whole way of one person. */
async function signedIn(openId: OpenIdClient, login: string) {
  const { address, secret } = await begun(openId);
  const back = await provider.signIn(address, login);
  return openId.finish(back.search, secret);
}

describe('sign-in at an identity provider', () => {
  it('sends the browser there with PKCE by S256, state and nonce', async () => {
    const openId = ebbline();
    expect(openId.label()).toBe(new URL(provider.issuer).host);
    const first = new URL((await begun(openId)).address).searchParams;
    expect(Object.fromEntries(first)).toMatchObject({
      response_type: 'code',
      client_id: 'ebbline',
      redirect_uri: returnAddress,
      code_challenge_method: 'S256',
    });
    const second = new URL((await begun(openId)).address).searchParams;
    for (const name of ['state', 'nonce', 'code_challenge']) {
      // RFC 6749 section 10.10: not to be guessed; 128 bits are 22 characters of base64url.
      expect(first.get(name)?.length).toBeGreaterThanOrEqual(22);
      expect(first.get(name)).not.toBe(second.get(name));
    }
  });

  it('is sent back to the public address by those who come from there, and to this machine by who sits at it', async () => {
    const openId = ebbline({ publicUrl: 'https://hall.example' });
    const returnOf = async (reached: { secure: boolean; host: string }): Promise<string | null> => {
      const begin = await openId.begin(reached, null);
      return begin.ok ? new URL(begin.value.address).searchParams.get('redirect_uri') : null;
    };
    const path = '/api/session/open-id/return';
    expect(await returnOf({ secure: true, host: 'rewritten.by.proxy' })).toBe(`https://hall.example${path}`);
    expect(await returnOf({ secure: false, host: '[::1]:8080' })).toBe(`http://[::1]:8080${path}`);
    expect(await returnOf(reached)).toBe(returnAddress);
  });

  it('knows who came back, by name and the highest role that a group of theirs has', async () => {
    const openId = ebbline();
    const { issuer } = provider;
    expect(await signedIn(openId, 'ines')).toEqual({
      ok: true,
      value: { who: { issuer, subject: 'ines', name: 'Ines Vidal', role: 'operator' }, before: null },
    });
    expect(await signedIn(openId, 'omar')).toMatchObject({
      ok: true,
      value: { who: { name: 'Omar Lindt', role: 'engineer' } },
    });
  });

  it('takes claims of the ID token itself, where the provider puts them there', async () => {
    provider = keep(await startOpenIdProvider({ ...client, returnAddress, people, byUserInfo: false }));
    expect(await signedIn(ebbline(), 'ines')).toMatchObject({
      ok: true,
      value: { who: { name: 'Ines Vidal', role: 'operator' } },
    });
  });

  it('does not name anyone by a mail address that the provider has not verified', async () => {
    expect(await signedIn(ebbline(), 'mail')).toMatchObject({
      ok: true,
      value: { who: { name: 'mail', role: 'engineer' } },
    });
  });

  it.each(['guest', 'stranger'])('lets %s not in, to whom no group gives a role', async (login) => {
    expect(await signedIn(ebbline(), login)).toMatchObject({ ok: false, fault: { code: 'OPEN_ID_NO_ROLE' } });
  });

  it('refuses an answer that comes a second time, and a code that comes with a state of another sign-in', async () => {
    const openId = ebbline();
    const { address, secret } = await begun(openId);
    const back = await provider.signIn(address, 'ines');
    expect(await openId.finish(back.search, secret)).toMatchObject({ ok: true });
    expect(await openId.finish(back.search, secret)).toMatchObject({ ok: false, fault: { code: 'OPEN_ID_NOT_BEGUN' } });

    const again = await begun(openId);
    const query = new URLSearchParams(back.search);
    query.set('state', new URL(again.address).searchParams.get('state') ?? '');
    // The code was used, and belongs to another PKCE verifier.
    const replayed = await openId.finish(query.toString(), again.secret);
    expect(replayed).toMatchObject({ ok: false, fault: { code: 'OPEN_ID_REFUSED' } });
    expect(JSON.stringify(replayed)).not.toContain(query.get('code'));
  });

  it('refuses a code that another browser was given: by state, by cookie, and by verifier', async () => {
    const openId = ebbline();
    const mine = await begun(openId);
    const theirs = await begun(openId);
    const back = await provider.signIn(theirs.address, 'omar');
    const notBegun = { ok: false, fault: { code: 'OPEN_ID_NOT_BEGUN' } };
    expect(await openId.finish(back.search, mine.secret)).toMatchObject(notBegun);
    expect(await openId.finish(back.search, null)).toMatchObject(notBegun);
    expect(await openId.finish('state=made-up&code=made-up', mine.secret)).toMatchObject(notBegun);
    expect(await openId.finish('', mine.secret)).toMatchObject(notBegun);
    const query = new URLSearchParams(back.search);
    query.set('state', new URL(mine.address).searchParams.get('state') ?? '');
    expect(await openId.finish(query.toString(), mine.secret)).toMatchObject({ fault: { code: 'OPEN_ID_REFUSED' } });
    // Nobody's guess ends the sign-in of the browser that began it.
    expect(
      await openId.finish((await provider.signIn((await begun(openId)).address, 'omar')).search, ''),
    ).toMatchObject(notBegun);
    expect(await openId.finish(back.search, theirs.secret)).toMatchObject({ ok: true });
  });

  it('refuses an answer that took longer than ten minutes', async () => {
    const openId = ebbline();
    const { address, secret } = await begun(openId);
    const back = await provider.signIn(address, 'ines');
    nowMs += 600_000;
    expect(await openId.finish(back.search, secret)).toMatchObject({ ok: false, fault: { code: 'OPEN_ID_NOT_BEGUN' } });
  });

  it('tells that the provider said no, and repeats only words of the standard', async () => {
    const openId = ebbline();
    const answered = async (error: string) => {
      const { address, secret } = await begun(openId);
      const state = new URL(address).searchParams.get('state') ?? '';
      return openId.finish(new URLSearchParams({ state, error, error_description: 'call 555' }).toString(), secret);
    };
    expect(await answered('access_denied')).toMatchObject({
      fault: { code: 'OPEN_ID_REFUSED', message: expect.stringContaining('access_denied') as string },
    });
    expect(JSON.stringify(await answered('call_555'))).not.toContain('555');
  });

  it('refuses a client whose secret is wrong, without a word of it', async () => {
    const refused = await signedIn(ebbline({ clientSecret: 'guessed-secret' }), 'ines');
    expect(refused).toMatchObject({ ok: false, fault: { code: 'OPEN_ID_REFUSED' } });
    expect(JSON.stringify(refused)).not.toContain('guessed-secret');
  });

  it('says that a provider is away or names itself otherwise, and asks it again the next time', async () => {
    const away = ebbline({ issuer: 'http://127.0.0.1:9' });
    expect(await away.begin(reached, null)).toMatchObject({ ok: false, fault: { code: 'OPEN_ID_UNREACHABLE' } });
    const other = ebbline({ issuer: `${provider.issuer}/other` });
    expect(await other.begin(reached, null)).toMatchObject({ ok: false, fault: { code: 'OPEN_ID_UNREACHABLE' } });

    const openId = ebbline();
    const { address, secret } = await begun(openId);
    const back = await provider.signIn(address, 'ines');
    await provider.stop();
    expect(await openId.finish(back.search, secret)).toMatchObject({
      ok: false,
      fault: { code: 'OPEN_ID_UNREACHABLE' },
    });
  });
});

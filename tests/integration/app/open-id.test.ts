import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { sessionSchema } from '@ebbline/shared/contract/people';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { freePort } from '../../helpers/free-port';
import { type OpenIdProvider, startOpenIdProvider } from '../../helpers/open-id-provider';
import { stopAfterAll } from '../../helpers/stop-after';
import { postJson, type RunningApp, startApp } from './running-app';

const keep = stopAfterAll();
const clientSecret = 'a-secret-of-this-run';
let provider: OpenIdProvider;
let app: RunningApp;

beforeAll(async () => {
  vi.spyOn(console, 'warn').mockReturnValue();
  const port = await freePort();
  provider = keep(
    await startOpenIdProvider({
      clientId: 'ebbline',
      clientSecret,
      returnAddress: `http://127.0.0.1:${port}/api/session/open-id/return`,
      people: {
        ines: { name: 'Ines Vidal', groups: ['night shift'] },
        guest: { name: 'Guest', groups: [] },
      },
    }),
  );
  const variables = {
    EBBLINE_HTTP_PORT: String(port),
    EBBLINE_OIDC_ISSUER: provider.issuer,
    EBBLINE_OIDC_CLIENT_ID: 'ebbline',
    EBBLINE_OIDC_CLIENT_SECRET: clientSecret,
    EBBLINE_OIDC_ROLES: 'groups; night shift=operator',
  };
  app = keep(await startApp({ variables }));
});

const go = (path: string, cookie: string): Promise<Response> =>
  fetch(`${app.url}${path}`, { redirect: 'manual', headers: { cookie } });
const cookieOf = (reply: Response, name: string): string =>
  reply.headers
    .getSetCookie()
    .find((line) => line.startsWith(`${name}=`))
    ?.split(';')[0] ?? '';

/** As a browser goes: there, sign in as `login`, and back. */
async function signIn(login: string, keptCookie?: string): Promise<Response> {
  const start = await go('/api/session/open-id/start', '');
  expect(start.status).toBe(303);
  const [cookie = ''] = start.headers.getSetCookie();
  expect(cookie).toMatch(/^ebbline-open-id=[\w-]{43}; .*HttpOnly/);
  expect(cookie).toMatch(/SameSite=Lax/);
  const back = await provider.signIn(start.headers.get('location') ?? '', login);
  return go(`${back.pathname}${back.search}`, keptCookie ?? cookieOf(start, 'ebbline-open-id'));
}

describe('sign-in at an identity provider, by the whole program', () => {
  it('offers the provider beside passwords', async () => {
    const session = sessionSchema.parse(await (await go('/api/session', '')).json());
    expect(session.ways).toMatchObject({ password: true, openId: { label: new URL(provider.issuer).host } });
  });

  it('begins a session in a strict cookie, by which the person acts under their name, and writes it down', async () => {
    const back = await signIn('ines');
    expect([back.status, back.headers.get('location')]).toEqual([303, '/']);
    const line = back.headers.getSetCookie().find((one) => one.startsWith('ebbline-session='));
    expect(line).toMatch(/HttpOnly/);
    expect(line).toMatch(/SameSite=Strict/);
    const cookie = cookieOf(back, 'ebbline-session');
    const session = sessionSchema.parse(await (await go('/api/session', cookie)).json());
    expect(session.person).toMatchObject({ name: 'Ines Vidal', role: 'operator', by: 'openId' });

    // Rights and proof against forged requests are those of any session.
    const people = await go('/api/people', cookie);
    expect([people.status, ((await people.json()) as { code: string }).code]).toEqual([403, 'RIGHT_MISSING']);
    const end = (csrf: string | null): Promise<Response> => {
      const init = postJson({});
      const proof = csrf === null ? {} : { 'x-ebbline-csrf': csrf };
      return fetch(`${app.url}/api/session/end`, {
        ...init,
        headers: { ...(init.headers as Record<string, string>), ...proof, cookie },
      });
    };
    expect((await end(null)).status).toBe(403);
    expect((await end(session.csrf)).status).toBe(200);
    expect(sessionSchema.parse(await (await go('/api/session', cookie)).json()).person).toBeNull();
  });

  it('leads whoever has no role, comes without the cookie, or comes twice to the page for signing in', async () => {
    expect((await signIn('guest')).headers.get('location')).toBe('/sign-in?refused=OPEN_ID_NO_ROLE');
    expect((await signIn('ines', '')).headers.get('location')).toBe('/sign-in?refused=OPEN_ID_NOT_BEGUN');
    const start = await go('/api/session/open-id/start', '');
    const cookie = cookieOf(start, 'ebbline-open-id');
    const back = await provider.signIn(start.headers.get('location') ?? '', 'ines');
    expect((await go(`${back.pathname}${back.search}`, cookie)).headers.get('location')).toBe('/');
    const again = await go(`${back.pathname}${back.search}`, cookie);
    expect(again.headers.get('location')).toBe('/sign-in?refused=OPEN_ID_NOT_BEGUN');
    expect(again.headers.getSetCookie()).toEqual([]);
  });

  it('writes sign-ins and refusals into the journal, and neither code, state nor secret anywhere', async () => {
    const proof = await app.signIn.admin();
    const reply = await fetch(`${app.url}/api/alarms/journal`, { headers: proof });
    const { rows } = (await reply.json()) as { rows: readonly JournalRow[] };
    expect(rows).toContainEqual(
      expect.objectContaining({ actor: 'Ines Vidal', reason: 'signed in by an identity provider as operator' }),
    );
    expect(rows.some(({ reason }) => reason?.startsWith('OPEN_ID_NO_ROLE') === true)).toBe(true);
    const all = JSON.stringify([rows, app.said, app.faults]);
    expect(all).not.toContain(clientSecret);
    expect(all).not.toMatch(/code=|state=/);
    expect(app.faults).toEqual([]);
  });

  it('leaves passwords as they are while the provider is away', async () => {
    const port = await freePort();
    const alone = keep(
      await startApp({
        variables: {
          EBBLINE_OIDC_ISSUER: `http://127.0.0.1:${port}`,
          EBBLINE_OIDC_CLIENT_ID: 'ebbline',
          EBBLINE_OIDC_ROLES: 'groups; night shift=operator',
        },
      }),
    );
    const start = await fetch(`${alone.url}/api/session/open-id/start`, { redirect: 'manual' });
    expect(start.headers.get('location')).toBe('/sign-in?refused=OPEN_ID_UNREACHABLE');
    expect((await alone.send('/api/units')).status).toBe(200);
  });
});

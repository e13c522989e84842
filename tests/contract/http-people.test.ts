import type { NewToken, PersonLink, SessionState } from '@ebbline/shared/contract/people';
import { peopleRoutes } from '@ebbline/shared/contract/people-routes';
import { expect, it } from 'vitest';
import { adminName, testPassword } from '../helpers/sign-in';
import { stopAfterAll } from '../helpers/stop-after';
import { demoSiteFile } from '../integration/app/demo-simulator';
import { postJson, startApp } from '../integration/app/running-app';
import { temporaryFolder } from '../helpers/temporary-folder';

const keep = stopAfterAll();

it('answers every route of people, sessions and tokens as the contract says', async () => {
  const folder = keep(await temporaryFolder());
  const app = keep(await startApp({ variables: { EBBLINE_SITE: await demoSiteFile(folder.path) } }));
  const admin = await app.signIn.admin();
  const asked = new Set<string>();
  const call = async (key: string, body?: unknown, id = '', proof = admin): Promise<unknown> => {
    const route = peopleRoutes.find(({ method, path }) => `${method} ${path}` === key);
    if (route === undefined) throw new Error(`no route ${key}`);
    const act = body === undefined ? {} : postJson(body);
    const headers = { ...proof, 'content-type': 'application/json' };
    const reply = await fetch(`${app.url}${route.path.replace('{id}', id)}`, { ...act, headers });
    const answer: unknown = await reply.json();
    expect(reply.status, `${key} ${JSON.stringify(answer)}`).toBe(200);
    expect(reply.headers.get('cache-control')).toBe('no-store');
    expect(route.reply.parse(answer), key).toEqual(answer);
    asked.add(key);
    return answer;
  };
  const session = (await call('get /api/session')) as SessionState;
  expect(session.person).toMatchObject({ name: adminName, role: 'admin', by: 'password' });
  const added = (await call('post /api/people', { name: 'Ines', role: 'operator' })) as PersonLink;
  await call('post /api/people/{id}/change', { role: 'engineer', reason: 'new duties' }, added.person.id);
  const again = (await call('post /api/people/{id}/link', { reason: 'link lost' }, added.person.id)) as PersonLink;
  await call('get /api/people');
  await call('post /api/session/set-up', { link: again.link.split('#')[1], password: testPassword }, '', {});
  await call('post /api/session/sign-in', { name: 'Ines', password: testPassword }, '', {});
  await call('post /api/session/demo', { name: 'Otto' }, '', {});
  const token = (await call('post /api/tokens', { name: 'shift report', rights: ['look'], days: 7 })) as NewToken;
  await call('get /api/tokens');
  const ofToken = (await call('get /api/session', undefined, '', {
    authorization: `Bearer ${token.secret}`,
  })) as SessionState;
  expect(ofToken.person).toMatchObject({ name: 'shift report', rights: ['look'], by: 'token' });
  await call('post /api/tokens/{id}/withdraw', { reason: 'made elsewhere' }, token.token.id);
  await call('post /api/session/end', { everywhere: true });
  const fresh = await fetch(`${app.url}/api/session/sign-in`, postJson({ name: adminName, password: testPassword }));
  const cookie = fresh.headers.getSetCookie()[0]?.split(';')[0] ?? '';
  const { csrf } = (await fresh.json()) as SessionState;
  const changed = { old: testPassword, password: 'nine willows over a kettle' };
  await call('post /api/session/password', changed, '', { cookie, 'x-ebbline-csrf': csrf ?? '' });
  expect([...asked].sort()).toEqual(peopleRoutes.map(({ method, path }) => `${method} ${path}`).sort());
  expect(app.faults).toEqual([]);
});

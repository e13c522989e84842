import { readFile } from 'node:fs/promises';
import { request } from 'node:http';
import type { JournalRow } from '@ebbline/shared/contract/alarm';
import {
  roles,
  rights as allRights,
  type NewToken,
  type PersonLink,
  type Right,
} from '@ebbline/shared/contract/people';
import { routeTable } from '@ebbline/shared/contract/route-table';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rightsOfRole } from '../../../backend/src/access/rights-of-role';
import { auditCauses } from '../../../backend/src/ports/audit';
import { adminName, beginSession, testPassword, type Proof } from '../../helpers/sign-in';
import { stopAfterAll } from '../../helpers/stop-after';
import { startApp } from './running-app';

const keep = stopAfterAll();
const app = keep(await startApp());
const admin = await app.signIn.admin();

const asked = async <Body>(path: string, body: unknown): Promise<Body> => {
  const headers = { ...admin, 'content-type': 'application/json' };
  const reply = await fetch(`${app.url}${path}`, { method: 'POST', headers, body: JSON.stringify(body) });
  expect(reply.status, path).toBe(200);
  return (await reply.json()) as Body;
};

/** Signs someone in who was added by the admin. */
async function personWith(role: string, name: string): Promise<Proof> {
  const { link } = await asked<PersonLink>('/api/people', { name, role });
  return beginSession(app.url, '/api/session/set-up', { link: link.split('#')[1], password: testPassword });
}
const tokenWith = async (name: string, rights: readonly Right[]): Promise<Proof> => {
  const { secret } = await asked<NewToken>('/api/tokens', { name, rights, days: 1 });
  return { authorization: `Bearer ${secret}` };
};

const forTokens = allRights.filter((right) => right !== 'managePeople' && right !== 'readAudit');
const proofs: Record<string, Proof> = { nobody: {}, admin };
for (const role of roles.filter((one) => one !== 'admin')) proofs[role] = await personWith(role, `A ${role}`);
for (const right of allRights)
  proofs[`token without ${right}`] = await tokenWith(
    `without ${right}`,
    forTokens.filter((one) => one !== right),
  );
proofs['ended'] = await personWith('admin', 'Ended');
await send('post', '/api/session/end', proofs['ended'], '{}');

/** With headers as they are, and a body that no route takes, so that who is let in changes nothing. */
async function send(
  method: string,
  path: string,
  headers: Proof = {},
  body = '{"of":"no route"}',
): Promise<{ status: number; code: string | undefined; headers: Headers }> {
  const json = method === 'post' ? { method: 'POST', body } : {};
  const reply = await fetch(`${app.url}${path}`, {
    ...json,
    headers: { 'content-type': 'application/json', ...headers },
  });
  const text = await reply.text();
  return { status: reply.status, code: (JSON.parse(text) as { code?: string }).code, headers: reply.headers };
}

const refusals = ['SIGN_IN_NEEDED', 'TOKEN_REFUSED', 'RIGHT_MISSING', 'CSRF_MISSING'];
const addressOf = (path: string): string =>
  path.replace('{unit}', 'm1').replace('{hall}', 'north').replace('{point}', 'loop.flow').replace('{id}', 'none');

/** What the table says of a caller; null: let in. */
function expected(who: string, right: Right | null, isPost: boolean): string | null {
  if (right === null) return null;
  if (who === 'nobody' || who === 'ended') return 'SIGN_IN_NEEDED';
  if (who === 'wrong csrf' || who === 'no csrf') return isPost ? 'CSRF_MISSING' : null;
  const role = roles.find((one) => one === who);
  if (role !== undefined) return rightsOfRole[role].includes(right) ? null : 'RIGHT_MISSING';
  const lacks = who === `token without ${right}` || !forTokens.includes(right as (typeof forTokens)[number]);
  return lacks ? 'RIGHT_MISSING' : null;
}

// First of all: of refusals from one station the journal holds a few a minute, and then their number.
await send('get', '/api/people', proofs['viewer']);
await send('post', '/api/site/reload', { cookie: admin['cookie'] ?? '' });
await send('post', '/api/alarms/none/acknowledge', proofs['operator'], '{"operator":"Ada"}');

describe('every route lets in whom the table says', () => {
  it.for(routeTable.map((route) => [`${route.method} ${route.path}`, route] as const))(
    '%s',
    async ([, { method, path, right }]) => {
      const { cookie = '' } = admin;
      const callers: Readonly<Record<string, Proof>> = {
        ...proofs,
        'wrong csrf': { cookie, 'x-ebbline-csrf': 'guessed' },
        'no csrf': { cookie },
      };
      for (const [who, proof] of Object.entries(callers)) {
        const { status, code } = await send(method, addressOf(path), proof);
        const said = expected(who, right, method === 'post');
        expect(refusals.includes(code ?? '') ? code : null, `${who}: ${status} ${code ?? ''}`).toBe(said);
        if (said !== null) expect(status).toBe(said === 'SIGN_IN_NEEDED' ? 401 : 403);
      }
    },
  );

  it('and the document of the interface, which is in no table', async () => {
    expect((await send('get', '/api/openapi.json')).code).toBe('SIGN_IN_NEEDED');
    expect((await send('get', '/api/openapi.json', proofs['viewer'])).status).toBe(200);
  });
});

describe('a session', () => {
  it('has a new secret at each sign-in, and none that the browser brought along', async () => {
    const brought = { cookie: `ebbline-session=${'A'.repeat(43)}` };
    const asked = { method: 'POST', body: JSON.stringify({ name: 'A viewer', password: testPassword }) };
    const headers = { 'content-type': 'application/json', ...brought };
    const first = await fetch(`${app.url}/api/session/sign-in`, { ...asked, headers });
    const [set = ''] = first.headers.getSetCookie();
    // RFC 6265bis sections 5.6.5 to 5.6.7; 256 bits in base64url are 43 characters (RFC 4648 section 5).
    expect(set).toMatch(/^ebbline-session=[\w-]{43}; Max-Age=\d+; Path=\/; HttpOnly; SameSite=Strict$/);
    const cookie = set.split(';')[0] ?? '';
    expect(cookie).not.toBe(brought.cookie);
    const again = await fetch(`${app.url}/api/session/sign-in`, { ...asked, headers: { ...headers, cookie } });
    expect(again.headers.getSetCookie()[0]).not.toContain(cookie);
    // The one before has ended with it.
    expect((await send('get', '/api/units', { cookie })).code).toBe('SIGN_IN_NEEDED');
    expect((await send('get', '/api/units', brought)).code).toBe('SIGN_IN_NEEDED');
  });

  it('does nothing for a page of another origin, whatever that page sends along', async () => {
    const { hostname, port } = new URL(app.url);
    for (const origin of ['http://elsewhere.example', `http://${hostname}:1`, 'null', `https://${hostname}:${port}`]) {
      const status = await new Promise<number>((resolve, reject) => {
        const headers = { ...admin, origin, 'content-type': 'application/json' };
        const asking = request({ hostname, port, path: '/api/site/reload', method: 'POST', headers }, (reply) => {
          reply.resume().on('end', () => resolve(reply.statusCode ?? 0));
        });
        asking.on('error', reject).end('{}');
      });
      expect(status, origin).toBe(403);
    }
  });

  it('is no one else’s name to act under', async () => {
    const body = JSON.stringify({ operator: 'Somebody else' });
    const refused = await send('post', '/api/alarms/none/acknowledge', proofs['operator'], body);
    expect(refused).toMatchObject({ status: 409, code: 'ACTOR_DIFFERS' });
    const own = JSON.stringify({ operator: ' a OPERATOR ' });
    expect((await send('post', '/api/alarms/none/acknowledge', proofs['operator'], own)).code).toBe('ALARM_UNKNOWN');
  });

  it('that is refused a password is told when to come again', async () => {
    const wrong = JSON.stringify({ name: 'Nobody of this name', password: 'x' });
    const answers = [];
    for (let i = 0; i < 6; i++) answers.push(await send('post', '/api/session/sign-in', {}, wrong));
    expect(answers[0]).toMatchObject({ status: 401, code: 'SIGN_IN_REFUSED' });
    // RFC 6585 section 4, RFC 9110 section 11.6.1.
    expect(answers[0]?.headers.get('www-authenticate')).toContain('Bearer');
    expect(answers[5]).toMatchObject({ status: 429, code: 'SIGN_IN_LATER' });
    expect(Number(answers[5]?.headers.get('retry-after'))).toBeGreaterThan(0);
  });
});

describe('the journal', () => {
  const read = async (proof: Proof): Promise<readonly JournalRow[]> => {
    const reply = await fetch(`${app.url}/api/alarms/journal`, { headers: proof });
    return ((await reply.json()) as { rows: readonly JournalRow[] }).rows;
  };

  it('tells who was refused what to whom may read it, and to nobody else', async () => {
    const rows = await read(admin);
    const reasons = rows.map(({ actor, reason }) => [actor, reason] as const);
    expect(reasons).toContainEqual(['A viewer', 'RIGHT_MISSING: get /api/people']);
    expect(reasons).toContainEqual([adminName, 'CSRF_MISSING: post /api/site/reload']);
    expect(reasons).toContainEqual(['A operator', expect.stringMatching(/^ACTOR_DIFFERS/)]);
    // What the program did, and what it raised where the machine is slow, is for everybody; sign-ins and refusals are not.
    const causesOf = (told: readonly JournalRow[]) => new Set(told.map(({ cause }) => cause));
    const ofPeople = (told: readonly JournalRow[]) =>
      [...causesOf(told)].filter((cause) => auditCauses.some((one) => one === cause));
    expect(ofPeople(rows)).toContain('actionRefused');
    const operators = await read(proofs['operator'] ?? {});
    expect(causesOf(operators)).toContain('programStarted');
    expect(ofPeople(operators)).toEqual([]);
    expect((await read(proofs['engineer'] ?? {})).length).toBeGreaterThan(0);
  });

  it('holds no secret', async () => {
    const text = JSON.stringify(await read(admin));
    for (const { cookie, authorization } of Object.values(proofs)) {
      const secret = (cookie ?? authorization ?? '').split(/[= ]/)[1];
      if (secret !== undefined) expect(text).not.toContain(secret);
    }
    expect(text).not.toContain(testPassword);
  });
});

it('a machine asks with a token as README says', async () => {
  const readme = await readFile(new URL('../../../README.md', import.meta.url), 'utf8');
  const line = /^curl -H "([^:]+): ([^"]+)" http:\/\/127\.0\.0\.1:8080(\S+)$/m.exec(readme);
  const [, name = '', value = '', path = ''] = line ?? [];
  const secret = proofs['token without permit']?.['authorization']?.replace('Bearer ', '') ?? '';
  const answer = await send('get', path, { [name]: value.replace('$EBBLINE_TOKEN', secret) });
  expect(answer.status).toBe(200);
});

describe('headers that are no proof', () => {
  const printable = fc.string({ unit: fc.integer({ min: 0x20, max: 0x7e }).map((code) => String.fromCharCode(code)) });
  const told = (headers: Proof) =>
    new Promise<number>((resolve, reject) => {
      const { hostname, port } = new URL(app.url);
      const asking = request({ hostname, port, path: '/api/units', headers }, (reply) => {
        reply.resume().on('end', () => resolve(reply.statusCode ?? 0));
      });
      asking.on('error', reject).end();
    });

  it('let nobody in, and are no fault of ours', async () => {
    const odd = fc.oneof(
      printable.map((text) => ({ cookie: text })),
      printable.map((text) => ({ cookie: `ebbline-session=${text}` })),
      printable.map((text) => ({ cookie: `ebbline-session=%${text}; __proto__=1; ebbline-session` })),
      printable.map((text) => ({ authorization: text })),
      printable.map((text) => ({ authorization: `Bearer ${text}` })),
      printable.map((text) => ({ authorization: `Basic ${text}`, cookie: admin['cookie'] ?? '' })),
    );
    await fc.assert(
      fc.asyncProperty(odd, async (headers) => {
        expect(await told(headers)).toBe(401);
      }),
      { numRuns: 150 },
    );
    expect(app.faults).toEqual([]);
  });
});

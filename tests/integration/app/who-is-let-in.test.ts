import { request } from 'node:http';
import { connect } from 'node:net';
import { io } from 'socket.io-client';
import { describe, expect, it } from 'vitest';
import { stopAfterAll } from '../../helpers/stop-after';
import { postJson, startApp } from './running-app';

const keep = stopAfterAll();
const app = keep(await startApp());
const { port } = new URL(app.url);

interface Answer {
  readonly status: number | undefined;
  readonly type: string | undefined;
  readonly body: { readonly code?: string; readonly status?: number; readonly instance?: string };
}

/** With headers that `fetch` would not send. */
const ask = async (path: string, headers: Record<string, string>, method = 'GET', body?: string): Promise<Answer> => {
  const proof = await app.signIn.proofFor(body);
  return new Promise((resolve, reject) => {
    const asking = request({ host: '127.0.0.1', port, path, method, headers: { ...proof, ...headers } }, (reply) => {
      let text = '';
      reply.setEncoding('utf8').on('data', (chunk: string) => (text += chunk));
      reply.on('end', () => {
        const type = reply.headers['content-type'];
        resolve({
          status: reply.statusCode,
          type,
          body: type?.includes('json') === true ? (JSON.parse(text) as Answer['body']) : {},
        });
      });
    });
    asking.on('error', reject);
    asking.end(body);
  });
};

const json = { 'content-type': 'application/json' };
const acknowledge = '/api/alarms/m1:WATER-1/acknowledge';

describe('requests', () => {
  it.for([
    ['by another name that leads here', { host: 'rebound.example' }, 'HOST_FOREIGN'],
    ['by another name with our port', { host: `rebound.example:${port}` }, 'HOST_FOREIGN'],
    [
      'from a page of another address',
      { host: `127.0.0.1:${port}`, origin: 'http://elsewhere.example' },
      'ORIGIN_FOREIGN',
    ],
    [
      'from a page of another port of this machine',
      { host: `127.0.0.1:${port}`, origin: 'http://127.0.0.1:1' },
      'ORIGIN_FOREIGN',
    ],
    ['from a page without an address', { host: `127.0.0.1:${port}`, origin: 'null' }, 'ORIGIN_FOREIGN'],
  ] as const)('%s are refused', async ([, headers, code]) => {
    for (const path of ['/api/health', '/']) {
      const answer = await ask(path, headers);
      expect(answer.status).toBe(403);
      expect(answer.body.code).toBe(code);
      expect(answer.type).toContain('application/problem+json');
    }
    expect((await ask('/socket.io/?EIO=4&transport=polling', headers)).status).toBe(403);
    expect((await ask(acknowledge, { ...headers, ...json }, 'POST', '{"operator":"Ines"}')).status).toBe(403);
  });

  it.for(['127.0.0.1', 'localhost', '[::1]'])('under %s are let in, also from our own page', async (name) => {
    const host = `${name}:${port}`;
    expect((await ask('/api/health', { host })).status).toBe(200);
    expect((await ask('/api/health', { host, origin: `http://${host}` })).status).toBe(200);
  });

  it('open no socket from a page of another address', async () => {
    const socket = io(app.url, {
      transports: ['websocket'],
      reconnection: false,
      forceNew: true,
      extraHeaders: { origin: 'http://elsewhere.example' },
    });
    keep({ stop: () => void socket.close() });
    const refused = await new Promise<boolean>((resolve) => {
      socket.once('connect_error', () => resolve(true));
      socket.once('connect', () => resolve(false));
    });
    expect(refused).toBe(true);
  });
});

describe('bodies', () => {
  it.for([
    [
      'that are no JSON by their type',
      { headers: { 'content-type': 'text/plain' }, body: '{"operator":"Ines"}' },
      415,
      'BODY_NOT_JSON',
    ],
    [
      'of a form',
      { headers: { 'content-type': 'application/x-www-form-urlencoded' }, body: 'operator=Ines' },
      415,
      'BODY_NOT_JSON',
    ],
    ['without a type', { headers: {}, body: '' }, 415, 'BODY_NOT_JSON'],
    [
      'in another encoding',
      { headers: { 'content-type': 'application/json; charset=utf-16' }, body: '{}' },
      415,
      'BODY_NOT_JSON',
    ],
    ['that are broken JSON', { headers: json, body: '{"operator":' }, 400, 'REQUEST_MALFORMED'],
    [
      'that are too large',
      { headers: json, body: JSON.stringify({ operator: 'Ines', comment: 'x'.repeat(20_000) }) },
      413,
      'BODY_TOO_LARGE',
    ],
    ['with an empty name', { headers: json, body: '{"operator":"  "}' }, 400, 'BODY_MALFORMED'],
    ['with more than is asked for', { headers: json, body: '{"operator":"Ines","admin":true}' }, 400, 'BODY_MALFORMED'],
    ['that are a list', { headers: json, body: '[1]' }, 400, 'BODY_MALFORMED'],
    ['without a name, about an alarm that does not stand', { headers: json, body: '{}' }, 404, 'ALARM_UNKNOWN'],
    ['about an alarm that does not stand', { headers: json, body: '{"operator":"Ines"}' }, 404, 'ALARM_UNKNOWN'],
  ] as const)('%s are refused', async ([, { headers, body }, status, code]) => {
    const reply = await app.send(acknowledge, { method: 'POST', headers, body: new TextEncoder().encode(body) });
    expect(reply.status).toBe(status);
    expect(reply.headers.get('content-type')).toContain('application/problem+json');
    expect(await reply.json()).toMatchObject({
      code,
      status,
      instance: acknowledge,
      type: `urn:ebbline:problem:${code}`,
    });
  });
});

describe('queries', () => {
  it.for([
    ['/api/history', 400, 'QUERY_MALFORMED'],
    ['/api/history?unit=m1&point=loop.flow&from=yesterday&to=2031-01-01T00:00:00Z', 400, 'QUERY_MALFORMED'],
    ['/api/history?unit=m1&point=loop.flow&from=2031-01-01T00:00:00Z&to=2031-01-01T00:00:00Z', 400, 'QUERY_MALFORMED'],
    [
      '/api/history?unit=m1&point=loop.flow&from=2031-01-01T00:00:00Z&to=2031-01-01T01:00:00Z&buckets=5001',
      400,
      'QUERY_MALFORMED',
    ],
    ['/api/history?unit=zz&point=loop.flow&from=2031-01-01T00:00:00Z&to=2031-01-01T01:00:00Z', 404, 'UNIT_UNKNOWN'],
    ['/api/history?unit=m1&point=zz&from=2031-01-01T00:00:00Z&to=2031-01-01T01:00:00Z', 404, 'POINT_UNKNOWN'],
    ['/api/alarms/journal?after=-1', 400, 'QUERY_MALFORMED'],
    ['/api/alarms/journal?sort=up', 400, 'QUERY_MALFORMED'],
    ['/api/alarms/journal?from=2031-01-01T01:00:00Z&to=2031-01-01T00:00:00Z', 400, 'QUERY_MALFORMED'],
    ['/api/units/zz/points', 404, 'UNIT_UNKNOWN'],
    ['/api/units/%E0%A4%A/points', 400, 'REQUEST_MALFORMED'],
    ['/api/nothing', 404, 'ROUTE_UNKNOWN'],
  ] as const)('%s is refused with %i', async ([path, status, code]) => {
    const reply = await app.send(path);
    expect(reply.status).toBe(status);
    expect(await reply.json()).toMatchObject({ code, status });
    expect(app.faults).toEqual([]);
  });

  it('for a point of the hall are answered under a unit of it', async () => {
    const path =
      '/api/history?unit=m1&point=ambient.pressure&from=2031-01-01T00:00:00Z&to=2031-01-01T01:00:00Z&buckets=2';
    expect(await (await app.send(path)).json()).toMatchObject({
      unit_of_measure: 'Pa',
      mean: [null, null],
      count: [0, 0],
    });
  });
});

describe('methods', () => {
  it.for([
    ['PUT', '/api/health', 'GET, HEAD'],
    ['POST', '/api/health', 'GET, HEAD'],
    ['OPTIONS', '/api/units/m1/points', 'GET, HEAD'],
    ['DELETE', '/api/openapi.json', 'GET, HEAD'],
    ['GET', acknowledge, 'POST'],
    ['DELETE', acknowledge, 'POST'],
    ['POST', '/', 'GET, HEAD'],
  ] as const)('%s of %s is refused, naming those that are known', async ([method, path, allowed]) => {
    const reply = await app.send(path, { method });
    // RFC 9110 section 15.5.6: 405 comes with Allow.
    expect(reply.status).toBe(405);
    expect(reply.headers.get('allow')).toBe(allowed);
    expect(await reply.json()).toMatchObject({ code: 'METHOD_NOT_ALLOWED', status: 405, instance: path });
  });

  it('GET and HEAD are answered alike, HEAD without a body', async () => {
    const reply = await app.send('/api/health', { method: 'HEAD' });
    expect(reply.status).toBe(200);
    expect(reply.headers.get('content-type')).toContain('application/json');
    expect(await reply.text()).toBe('');
  });
});

describe('what is no request', () => {
  it.for([
    ['that is no HTTP', 'hello\r\n\r\n', 400, 'REQUEST_MALFORMED'],
    [
      'with two lengths',
      'POST / HTTP/1.1\r\nHost: x\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\n',
      400,
      'REQUEST_MALFORMED',
    ],
    ['with endless headers', `GET / HTTP/1.1\r\nHost: x\r\nX: ${'a'.repeat(20_000)}\r\n\r\n`, 431, 'HEADERS_TOO_LARGE'],
  ] as const)('%s is answered as a problem', async ([, text, status, code]) => {
    const answer = await new Promise<string>((resolve, reject) => {
      const socket = connect(Number(port), '127.0.0.1', () => socket.write(text));
      let told = '';
      socket.setEncoding('utf8').on('data', (chunk: string) => (told += chunk));
      socket.on('close', () => resolve(told)).on('error', reject);
    });
    const [head, body] = answer.split('\r\n\r\n');
    expect(head).toMatch(new RegExp(`^HTTP/1\\.1 ${status} `));
    expect(head).toContain('application/problem+json');
    expect(JSON.parse(body ?? '')).toMatchObject({ code, status });
  });
});

describe('answers', () => {
  it('are not kept by anyone on the way, and bring a strict policy', async () => {
    const reply = await app.send('/api/health');
    expect(reply.headers.get('cache-control')).toBe('no-store');
    expect(reply.headers.get('content-security-policy')).toMatch(/default-src 'none'.*script-src 'self'/);
    expect(reply.headers.get('x-powered-by')).toBeNull();
    expect((await app.send(acknowledge, postJson({}))).headers.get('cache-control')).toBe('no-store');
  });
});

import { describe, expect, it } from 'vitest';
import { createEdge } from '../../../../../backend/src/connections/config/edge';

type Headers = Record<string, string>;
const from = (remoteAddress: string, headers: Headers = {}, encrypted = false) => ({
  headers,
  socket: { remoteAddress, encrypted },
});
const codeOf = (edge: ReturnType<typeof createEdge>, request: ReturnType<typeof from>): string | null =>
  edge.refusalOf(request)?.code ?? null;

describe('on loopback', () => {
  const edge = createEdge({ host: '127.0.0.1', proxies: [], publicUrl: null });

  it.for(['127.0.0.1:8080', 'localhost:8080', '[::1]:8080', 'LOCALHOST'])('%s is this program', (host) => {
    expect(codeOf(edge, from('127.0.0.1', { host }))).toBeNull();
    expect(codeOf(edge, from('127.0.0.1', { host, origin: `http://${host}` }))).toBeNull();
    expect(codeOf(edge, from('127.0.0.1', { host, origin: `https://${host}` }))).toBe('ORIGIN_FOREIGN');
  });

  it.for(['rebound.example', '127.0.0.1@x', '', '192.0.2.1'])('%j is not', (host) => {
    expect(codeOf(edge, from('127.0.0.1', { host }))).toBe('HOST_FOREIGN');
  });

  it('believes no forwarding header of anyone', () => {
    const forged = { host: 'localhost', 'x-forwarded-for': '192.0.2.9', 'x-forwarded-proto': 'https' };
    expect(edge.exposed).toBe(false);
    expect(edge.stationOf(from('::ffff:127.0.0.1', forged))).toBe('127.0.0.1');
    expect(edge.isSecure(from('127.0.0.1', forged))).toBe(false);
    expect(codeOf(edge, from('127.0.0.1', { host: 'x.example', 'x-forwarded-host': 'localhost' }))).toBe(
      'HOST_FOREIGN',
    );
  });
});

describe('through a proxy that nobody named', () => {
  it.for(['x-forwarded-for', 'x-forwarded-host', 'x-forwarded-proto', 'forwarded'])(
    'nobody passes for whoever sits at this machine: %s gives it away',
    (name) => {
      for (const proxies of [[], ['10.0.0.5']]) {
        const edge = createEdge({ host: '127.0.0.1', proxies, publicUrl: 'https://hall.example' });
        const asked = from('127.0.0.1', { host: '127.0.0.1:8080', [name]: 'https' });
        expect(codeOf(edge, asked)).toBe('NOT_SECURED');
      }
    },
  );
});

describe('with TLS of its own', () => {
  const edge = createEdge({ host: '0.0.0.0', proxies: [], publicUrl: 'https://hall.example:8443' });

  it('is reached under its public name from anywhere, and under names of this machine from here only', () => {
    expect(edge.exposed).toBe(true);
    expect(codeOf(edge, from('192.0.2.9', { host: 'hall.example:8443' }, true))).toBeNull();
    expect(codeOf(edge, from('192.0.2.9', { host: 'localhost:8443' }, true))).toBe('HOST_FOREIGN');
    expect(codeOf(edge, from('192.0.2.9', { host: '0.0.0.0:8443' }, true))).toBe('HOST_FOREIGN');
    expect(codeOf(edge, from('127.0.0.1', { host: 'localhost:8443' }, true))).toBeNull();
    expect(edge.isSecure(from('192.0.2.9', {}, true))).toBe(true);
  });

  it('serves pages of its public origin only', () => {
    const asking = (origin: string) => codeOf(edge, from('192.0.2.9', { host: 'hall.example:8443', origin }, true));
    expect(asking('https://hall.example:8443')).toBeNull();
    for (const origin of ['http://hall.example:8443', 'https://hall.example', 'https://x.hall.example:8443', 'null'])
      expect(asking(origin)).toBe('ORIGIN_FOREIGN');
  });
});

describe('behind a named proxy', () => {
  const edge = createEdge({ host: '0.0.0.0', proxies: ['10.0.0.5', 'fd00::/64'], publicUrl: 'https://hall.example' });
  const told = { 'x-forwarded-for': '192.0.2.9', 'x-forwarded-proto': 'https', 'x-forwarded-host': 'hall.example' };

  it('asks as the station that the proxy names, over TLS', () => {
    for (const proxy of ['10.0.0.5', '::ffff:10.0.0.5', 'fd00::7']) {
      const request = from(proxy, { host: '10.0.0.2:8080', ...told });
      expect(edge.stationOf(request)).toBe('192.0.2.9');
      expect(edge.isSecure(request)).toBe(true);
      expect(codeOf(edge, request)).toBeNull();
    }
  });

  it('takes of a list of addresses the one that the proxy saw, not what was sent to it', () => {
    const request = from('10.0.0.5', { ...told, 'x-forwarded-for': '127.0.0.1, 198.51.100.3' });
    expect(edge.stationOf(request)).toBe('198.51.100.3');
    const nonsense = from('10.0.0.5', { ...told, 'x-forwarded-for': 'unknown' });
    expect(edge.stationOf(nonsense)).toBe('10.0.0.5');
    expect(edge.isSecure(from('10.0.0.5', { ...told, 'x-forwarded-proto': 'https, http' }))).toBe(false);
    // TLS between the proxy and us says nothing of the way to the proxy.
    expect(edge.isSecure(from('10.0.0.5', { ...told, 'x-forwarded-proto': 'http' }, true))).toBe(false);
  });

  it('refuses whoever comes beside the proxy, or through it without TLS, whatever they claim', () => {
    expect(codeOf(edge, from('192.0.2.9', { host: 'hall.example', ...told }))).toBe('NOT_SECURED');
    expect(codeOf(edge, from('192.0.2.9', { host: 'localhost', ...told }))).toBe('HOST_FOREIGN');
    expect(codeOf(edge, from('10.0.0.5', { ...told, 'x-forwarded-proto': 'http' }))).toBe('NOT_SECURED');
    expect(codeOf(edge, from('10.0.0.5', { host: 'hall.example' }))).toBe('NOT_SECURED');
    expect(codeOf(edge, from('10.0.0.5', { ...told, 'x-forwarded-host': 'elsewhere.example' }))).toBe('HOST_FOREIGN');
  });

  it('still answers this machine under its own names', () => {
    expect(codeOf(edge, from('127.0.0.1', { host: '127.0.0.1:8080' }))).toBeNull();
    expect(edge.stationOf(from('127.0.0.1', { host: '127.0.0.1:8080', ...told }))).toBe('127.0.0.1');
  });
});

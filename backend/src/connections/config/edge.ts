import { isIP } from 'node:net';
import type { IncomingMessage } from 'node:http';
import proxyAddress from 'proxy-addr';
import type { Edge, EdgeRefusal, EdgeRequest } from '../../ports/edge';
import { isLoopbackAddress, isLoopbackHost } from './is-loopback';

export interface EdgeSettings {
  /** What HTTP listens on. */
  readonly host: string;
  /** Addresses, or ranges such as 10.0.0.0/24, whose forwarding headers are believed. */
  readonly proxies: readonly string[];
  /** Origin under which browsers reach the program, such as https://hall.example; null: only under this machine's own names. */
  readonly publicUrl: string | null;
}

const hostForeign: EdgeRefusal = {
  code: 'HOST_FOREIGN',
  message:
    'This address is not one of this program: open it under the address that it printed when it started, or that of EBBLINE_PUBLIC_URL.',
};
const originForeign: EdgeRefusal = {
  code: 'ORIGIN_FOREIGN',
  message:
    'A page of another address may not use this program: open the screens under the address that it printed when it started.',
};
const notSecured: EdgeRefusal = {
  code: 'NOT_SECURED',
  message:
    'From other machines this program is reached over TLS only: open it at its public address. A proxy must be named in EBBLINE_PROXY, and send X-Forwarded-For and X-Forwarded-Proto.',
};
/** What a proxy writes of whom it asks for (RFC 7239, and the older ways). */
const marksOfProxies = ['forwarded', 'x-forwarded-for', 'x-forwarded-host', 'x-forwarded-proto'] as const;

/**
 * Lets in only what is addressed to the public name, or at this machine to a loopback name; and of browsers
 * only pages that this program itself served. So a page from elsewhere cannot act through the browser of
 * someone who may, not even by a name of its own that resolves to an address of ours.
 */
export function createEdge({ host, proxies, publicUrl }: EdgeSettings): Edge {
  const exposed = !isLoopbackHost(host) || proxies.length > 0;
  const trusts = proxyAddress.compile([...proxies]);
  const own = host.toLowerCase();
  const localNames = new Set(['localhost', '127.0.0.1', '[::1]', ...(exposed ? [] : [own, `[${own}]`])]);

  const remoteOf = ({ socket }: EdgeRequest): string => socket.remoteAddress ?? '';
  const isForwarded = (request: EdgeRequest): boolean =>
    proxies.length > 0 && trusts(remoteOf(request), 0) && request.headers['x-forwarded-for'] !== undefined;
  const isSecure = (request: EdgeRequest): boolean =>
    isForwarded(request)
      ? last(request.headers['x-forwarded-proto'])?.toLowerCase() === 'https'
      : request.socket.encrypted === true;

  return {
    exposed,
    isSecure,
    stationOf(request) {
      const remote = remoteOf(request);
      // The package asks for a whole message and looks at headers and socket alone.
      // eslint-disable-next-line @typescript-eslint/no-unsafe-class-instance-assignment
      const told = isForwarded(request) ? proxyAddress(request as IncomingMessage, trusts) : remote;
      return (isIP(told) === 0 ? remote : told).replace(/^::ffff:(?=\d+\.)/, '');
    },
    refusalOf(request) {
      const forwarded = isForwarded(request);
      const asked =
        (forwarded ? last(request.headers['x-forwarded-host']) : undefined) ?? last(request.headers['host']);
      const secure = isSecure(request);
      const scheme = secure ? 'https' : 'http';
      const url = asked === undefined ? null : urlOf(asked, scheme);
      if (url === null) return hostForeign;
      const atThisMachine = !forwarded && isLoopbackAddress(remoteOf(request)) && localNames.has(url.hostname);
      // Through a proxy that nobody named, strangers would pass for whoever sits at this machine.
      if (atThisMachine && marksOfProxies.some((name) => request.headers[name] !== undefined)) return notSecured;
      if (!atThisMachine) {
        const known = publicUrl === null ? null : new URL(publicUrl);
        // Without TLS the name has another usual port; what is amiss then is the way, not the name.
        if (known === null || (secure ? url.host !== known.host : url.hostname !== known.hostname)) return hostForeign;
        if (!secure) return notSecured;
      }
      const origin = last(request.headers['origin']);
      // A browser names the page that asks; programs that are no browser name none.
      if (origin !== undefined && origin.toLowerCase() !== url.origin) return originForeign;
      return null;
    },
  };
}

/** `127.0.0.1:8080` → its URL; null where it is no host. */
function urlOf(host: string, scheme: string): URL | null {
  const url = `${scheme}://${host}/`;
  return /^[A-Za-z0-9.:[\]_-]+$/.test(host) && URL.canParse(url) ? new URL(url) : null;
}

/** Of a header that is there several times, or is a list, what the nearest proxy has written: it stands last. */
function last(header: string | readonly string[] | undefined): string | undefined {
  const text = typeof header === 'string' ? header : header?.at(-1);
  return text?.split(',').at(-1)?.trim();
}

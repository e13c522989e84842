import type { AccessPolicy, AccessRefusal } from '../../ports/access-policy';

const hostForeign: AccessRefusal = {
  code: 'HOST_FOREIGN',
  message: 'This address is not one of this program: open it under the address that it printed when it started.',
};
const originForeign: AccessRefusal = {
  code: 'ORIGIN_FOREIGN',
  message:
    'A page of another address may not use this program: open the screens under the address that it printed when it started.',
};

/**
 * Lets in only what is addressed to this machine by a loopback name, or to the configured host; and of
 * browsers only pages that this program itself served. So a page from elsewhere cannot act through the
 * browser of someone who sits here, not even by a name of its own that resolves to 127.0.0.1.
 */
export function accessPolicy(configuredHost: string): AccessPolicy {
  const names = new Set([
    'localhost',
    '127.0.0.1',
    '[::1]',
    configuredHost.toLowerCase(),
    `[${configuredHost.toLowerCase()}]`,
  ]);
  return {
    refusalOf({ host, origin }) {
      const name = host === undefined ? null : nameOf(host);
      if (name === null || !names.has(name)) return hostForeign;
      // A browser names the page that asks; programs that are no browser name none.
      if (origin !== undefined && originHost(origin) !== host?.toLowerCase()) return originForeign;
      return null;
    },
  };
}

/** `127.0.0.1:8080` → `127.0.0.1`; null where it is no host. */
function nameOf(host: string): string | null {
  const url = `http://${host}/`;
  return /^[A-Za-z0-9.:[\]_-]+$/.test(host) && URL.canParse(url) ? new URL(url).hostname : null;
}

const originHost = (origin: string): string | null =>
  /^https?:\/\//i.test(origin) ? origin.replace(/^https?:\/\//i, '').toLowerCase() : null;

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { askRaw } from '../../helpers/ask-raw';
import { stopAfterAll } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { startApp } from './running-app';

const keep = stopAfterAll();
const frontend = keep(await temporaryFolder());
writeFileSync(join(frontend.path, 'index.html'), '<!doctype html><title>Ebbline</title>');
const app = keep(await startApp({ frontendFolder: frontend.path }));

/** OWASP ASVS 5.0, V3.4.3 to V3.4.8 (from memory), and the OWASP Secure Headers Project's list for what is no longer to be sent. */
it.for(['/', '/halls/north', '/api/health/alive', '/api/nothing', '/assets/none.js', '/api/site'])(
  'every answer brings the headers that have a browser hold back: %s',
  async (path) => {
    const { headers } = await askRaw(`${app.url}${path}`);
    const policy = String(headers['content-security-policy']);
    const directives = new Map(
      policy.split(';').map((one) => {
        const [name = '', ...values] = one.trim().split(' ');
        return [name, values.join(' ')] as const;
      }),
    );
    expect(directives.get('default-src')).toBe("'none'");
    expect(directives.get('script-src')).toBe("'self'");
    for (const name of ['object-src', 'base-uri', 'frame-ancestors', 'form-action'])
      expect(directives.get(name), name).toBe("'none'");
    expect(policy).not.toMatch(/unsafe|\*|data:|https?:/);
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'x-frame-options': 'DENY',
    });
    expect(headers['permissions-policy']).toMatch(/camera=\(\).*geolocation=\(\).*microphone=\(\)/);
    expect(headers['permissions-policy']).toMatch(/screen-wake-lock=\(self\)/);
    // Without TLS browsers have to ignore it (RFC 6797 section 7.2), and on loopback there is none.
    expect(headers['strict-transport-security']).toBeUndefined();
    for (const name of ['server', 'x-powered-by', 'access-control-allow-origin'])
      expect(headers[name], name).toBeUndefined();
  },
);

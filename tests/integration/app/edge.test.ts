import { readFileSync } from 'node:fs';
import { connect } from 'node:tls';
import { beforeAll, describe, expect, it } from 'vitest';
import { startBackend } from '../../../backend/src/main';
import { askRaw } from '../../helpers/ask-raw';
import { createAuthority, type Authority } from '../../helpers/certificates';
import { freePort } from '../../helpers/free-port';
import { linkIn, testPassword } from '../../helpers/sign-in';
import { stopAfterAll } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { smallSiteFile, startApp } from './running-app';

const keep = stopAfterAll();
const json = { 'content-type': 'application/json' };
let authority: Authority;
let ca: Buffer;

beforeAll(async () => {
  const folder = keep(await temporaryFolder());
  authority = await createAuthority(folder.path, 'hall');
  ca = readFileSync(authority.file);
});

/** The program with settings of its own; what it said, and where it is. */
async function start(data: string, variables: Record<string, string>) {
  const said: string[] = [];
  const running = await startBackend({
    variables: {
      EBBLINE_DATA: data,
      EBBLINE_SITE: smallSiteFile,
      EBBLINE_SIMULATOR: 'off',
      EBBLINE_HTTP_PORT: '0',
      EBBLINE_MQTT_PORT: '0',
      ...variables,
    },
    workingFolder: data,
    demoSiteFile: smallSiteFile,
    frontendFolder: null,
    historyWorker: null,
    siteWorker: null,
    say: (line) => said.push(line),
    report: () => undefined,
  });
  keep(running);
  return { ...running, said };
}

const tlsFiles = async () => {
  const { certificate, key } = await authority.issue('127.0.0.1');
  return { EBBLINE_TLS_CERTIFICATE_FILE: certificate, EBBLINE_TLS_KEY_FILE: key };
};

/** A data folder in which there is an admin. */
async function folderWithAdmin(): Promise<string> {
  const { path } = keep(await temporaryFolder());
  const app = await startApp({ dataFolder: path });
  await app.signIn.admin();
  await app.stop();
  return path;
}

describe('with TLS of its own', () => {
  it('serves over 1.2 and newer only, sets cookies that go over TLS alone, and has browsers stay with it', async () => {
    const { path } = keep(await temporaryFolder());
    const { address, said } = await start(path, await tlsFiles());
    expect(address).toMatch(/^https:\/\/127\.0\.0\.1:\d+\/$/);
    const alive = await askRaw(`${address}api/health/alive`, { ca });
    expect(alive.status).toBe(200);
    // ASVS 5.0 V3.4.1, from memory: at least a year.
    expect(alive.headers['strict-transport-security']).toBe('max-age=31536000; includeSubDomains');
    const link = linkIn(said.join('\n'));
    const body = JSON.stringify({ link, name: 'Ada', password: testPassword });
    const setUp = await askRaw(`${address}api/session/set-up`, { method: 'POST', headers: json, body, ca });
    expect(setUp.status).toBeLessThan(300);
    expect(setUp.headers['set-cookie']?.join()).toMatch(
      /^__Host-ebbline-session=[\w-]+;(?=.*Secure)(?=.*HttpOnly)(?=.*SameSite=Strict)(?=.*Path=\/)(?!.*Domain)/,
    );
    const older = { minVersion: 'TLSv1', maxVersion: 'TLSv1.1', ciphers: 'DEFAULT@SECLEVEL=0' } as const;
    const refused = await new Promise<string>((resolve) => {
      const socket = connect({ port: Number(new URL(address).port), host: '127.0.0.1', ca, ...older }, () =>
        resolve('let in'),
      );
      socket.on('error', (fault: NodeJS.ErrnoException) => resolve(fault.code ?? ''));
    });
    expect(refused).toBe('ERR_SSL_TLSV1_ALERT_PROTOCOL_VERSION');
  });

  it('does not start with files that do not belong together, and shows nothing of them', async () => {
    const { path } = keep(await temporaryFolder());
    const [one, other] = [await tlsFiles(), await tlsFiles()];
    await expect(start(path, { ...one, EBBLINE_TLS_KEY_FILE: other.EBBLINE_TLS_KEY_FILE })).rejects.toThrow(
      'EBBLINE_TLS_KEY_FILE does not belong to EBBLINE_TLS_CERTIFICATE_FILE',
    );
    await expect(start(path, { ...one, EBBLINE_TLS_KEY_FILE: smallSiteFile })).rejects.toThrow(/is no PEM/);
  });
});

describe('beyond loopback', () => {
  it('the program starts only once there is an admin, and says how to get one', async () => {
    const { path } = keep(await temporaryFolder());
    const port = await freePort();
    const open = {
      ...(await tlsFiles()),
      EBBLINE_HTTP_HOST: '0.0.0.0',
      EBBLINE_HTTP_PORT: `${port}`,
      EBBLINE_PUBLIC_URL: `https://hall.example:${port}`,
    };
    await expect(start(path, open)).rejects.toThrow(/there is no admin yet.\n.*EBBLINE_HTTP_HOST=127\.0\.0\.1/);
    const { address } = await start(await folderWithAdmin(), open);
    expect(address).toBe(`https://hall.example:${port}/`);
    const ask = (headers: Record<string, string>) =>
      askRaw(`https://127.0.0.1:${port}/api/session`, { ca, headers }).then(({ status }) => status);
    expect(await ask({ host: `hall.example:${port}` })).toBe(200);
    expect(await ask({ host: `hall.example:${port}`, origin: `https://hall.example:${port}` })).toBe(200);
    expect(await ask({ host: `hall.example:${port}`, origin: `http://hall.example:${port}` })).toBe(403);
    expect(await ask({ host: `elsewhere.example:${port}` })).toBe(403);
  });
});

describe('behind a named proxy', () => {
  const told = { 'x-forwarded-for': '192.0.2.9', 'x-forwarded-proto': 'https', 'x-forwarded-host': 'hall.example' };

  it('what the proxy says is believed: cookies are Secure, a way without TLS is refused, nobody unsigned looks', async () => {
    const { path } = keep(await temporaryFolder());
    const { address, said } = await start(path, {
      EBBLINE_PROXY: '127.0.0.1',
      EBBLINE_PUBLIC_URL: 'https://hall.example',
    });
    expect(address).toBe('https://hall.example/');
    const place = `http://127.0.0.1:${portIn(said)}`;
    const clear = await askRaw(`${place}/api/health/alive`, { headers: { ...told, 'x-forwarded-proto': 'http' } });
    expect(clear.status).toBe(403);
    expect(JSON.parse(clear.text)).toMatchObject({ code: 'NOT_SECURED' });
    expect((await askRaw(`${place}/api/site`, { headers: told })).status).toBe(401);
    const body = JSON.stringify({ link: linkIn(said.join('\n')), name: 'Ada', password: testPassword });
    const headers = { ...json, ...told, origin: 'https://hall.example' };
    const setUp = await askRaw(`${place}/api/session/set-up`, { method: 'POST', headers, body });
    expect(setUp.headers['set-cookie']?.join()).toMatch(/^__Host-ebbline-session=.*Secure/);
    expect(setUp.headers['strict-transport-security']).toBeDefined();
  });

  it('each station that the proxy names has limits of its own', async () => {
    const { path } = keep(await temporaryFolder());
    const { said } = await start(path, { EBBLINE_PROXY: '127.0.0.1', EBBLINE_PUBLIC_URL: 'https://hall.example' });
    const guess = (station: string) =>
      askRaw(`http://127.0.0.1:${portIn(said)}/api/session/sign-in`, {
        method: 'POST',
        headers: { ...json, ...told, 'x-forwarded-for': station },
        body: '{}',
      });
    for (let i = 0; i < 120; i++) expect((await guess('192.0.2.9')).status).toBe(400);
    const refused = await guess('192.0.2.9');
    expect(refused.status).toBe(429);
    expect(JSON.parse(refused.text)).toMatchObject({ code: 'TOO_MANY_REQUESTS', status: 429 });
    // RFC 9110 section 10.2.3: whole seconds.
    expect(Number(refused.headers['retry-after'])).toBeGreaterThanOrEqual(1);
    expect(Number(refused.headers['retry-after'])).toBeLessThanOrEqual(60);
    expect((await guess('192.0.2.10')).status).toBe(400);
  });
});

/** Behind a proxy the public address is printed; the one to be reached by it stands beside it. */
const portIn = (said: readonly string[]): string => /^HTTP on \S+:(\d+)$/m.exec(said.join('\n'))?.[1] ?? '';

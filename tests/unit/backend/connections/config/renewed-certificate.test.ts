import { copyFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { followCertificate } from '../../../../../backend/src/connections/config/renewed-certificate';
import {
  readServerCertificate,
  type ServerCertificate,
} from '../../../../../backend/src/connections/config/server-certificate';
import { createAuthority } from '../../../../helpers/certificates';
import { stopAfterEach } from '../../../../helpers/stop-after';
import { temporaryFolder } from '../../../../helpers/temporary-folder';

const keep = stopAfterEach();
const names = { certificate: 'CERTIFICATE', key: 'KEY' };

/** Looks when the test says so. */
function tickerByHand() {
  let work = (): void => undefined;
  const ticker = {
    every: (_periodMs: number, next: () => void) => {
      work = next;
      return { stop: () => undefined };
    },
  };
  return { ticker, look: () => work() };
}

it('a certificate that is renewed is used, and one that is damaged is told of while the old one stays', async () => {
  const folder = keep(await temporaryFolder());
  const authority = await createAuthority(folder.path, 'hall');
  const files = { certificate: join(folder.path, 'cert.pem'), key: join(folder.path, 'key.pem') };
  const put = async (): Promise<void> => {
    const issued = await authority.issue('hall.example');
    copyFileSync(issued.certificate, files.certificate);
    copyFileSync(issued.key, files.key);
  };
  await put();
  const used: ServerCertificate[] = [];
  const said: string[] = [];
  const { ticker, look } = tickerByHand();
  followCertificate({ files, names, ticker, say: (line) => said.push(line), use: (one) => used.push(one) });
  look();
  expect(used).toEqual([]);
  await put();
  look();
  look();
  expect(used).toHaveLength(1);
  expect(said).toEqual(['CERTIFICATE: the renewed certificate is used.']);
  writeFileSync(files.key, 'half a k');
  look();
  look();
  expect(used).toHaveLength(1);
  expect(said).toHaveLength(2);
  expect(said[1]).toMatch(/the one before stays/);
  expect(said[1]).not.toContain('half a k');
});

it('a certificate that can no longer be looked at is told of once, and used again when it can', async () => {
  const folder = keep(await temporaryFolder());
  const issued = await (await createAuthority(folder.path, 'hall')).issue('hall.example');
  const files = { certificate: join(folder.path, 'cert.pem'), key: issued.key };
  copyFileSync(issued.certificate, files.certificate);
  const used: ServerCertificate[] = [];
  const said: string[] = [];
  const { ticker, look } = tickerByHand();
  followCertificate({ files, names, ticker, say: (line) => said.push(line), use: (one) => used.push(one) });
  rmSync(files.certificate);
  // A link that leads to itself can't be followed by anybody.
  symlinkSync(files.certificate, files.certificate);
  look();
  look();
  expect(said).toEqual([expect.stringMatching(/^CERTIFICATE .*ELOOP.*; the one before stays\.$/)]);
  rmSync(files.certificate);
  copyFileSync(issued.certificate, files.certificate);
  look();
  expect(used).toHaveLength(1);
  expect(said).toHaveLength(2);
});

it('of two files that do not belong together none is used', async () => {
  const folder = keep(await temporaryFolder());
  const authority = await createAuthority(folder.path, 'hall');
  const [one, other] = [await authority.issue('a.example'), await authority.issue('b.example')];
  expect(readServerCertificate(one, names)).toMatchObject({ ok: true, value: { minVersion: 'TLSv1.2' } });
  expect(readServerCertificate({ ...one, key: other.key }, names)).toEqual({
    ok: false,
    fault: 'KEY does not belong to CERTIFICATE',
  });
  expect(readServerCertificate({ ...one, key: join(folder.path, 'none') }, names)).toMatchObject({ ok: false });
});

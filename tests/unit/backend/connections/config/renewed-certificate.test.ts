import { copyFileSync, writeFileSync } from 'node:fs';
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
  let look = (): void => undefined;
  const ticker = {
    every: (_periodMs: number, work: () => void) => {
      look = work;
      return { stop: () => undefined };
    },
  };
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

import 'reflect-metadata';
import { webcrypto } from 'node:crypto';
import { writeFile } from 'node:fs/promises';
import { isIP } from 'node:net';
import { join } from 'node:path';
import {
  BasicConstraintsExtension,
  cryptoProvider,
  PemConverter,
  SubjectAlternativeNameExtension,
  X509CertificateGenerator,
  type X509Certificate,
} from '@peculiar/x509';

cryptoProvider.set(webcrypto as Crypto);

const algorithm = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' };
const dayMs = 86_400_000;

export interface IssuedFiles {
  readonly certificate: string;
  readonly key: string;
}

export interface Authority {
  /** File of the authority's own certificate, in PEM. */
  readonly file: string;
  /** A certificate for a name or address, from and to so many days from now. */
  issue(name: string, days?: { readonly from: number; readonly to: number }): Promise<IssuedFiles>;
}

/** A certificate authority of a test's own; everything it makes lies in `folder`, readable by all, and is worth nothing. */
export async function createAuthority(folder: string, name: string): Promise<Authority> {
  const keys = await webcrypto.subtle.generateKey(algorithm, true, ['sign', 'verify']);
  const own = await X509CertificateGenerator.createSelfSigned({
    serialNumber: '01',
    name: `CN=${name}`,
    ...validity({ from: -1, to: 30 }),
    keys: keys,
    signingAlgorithm: algorithm,
    extensions: [new BasicConstraintsExtension(true, 1, true)],
  });
  const write = async (file: string, text: string): Promise<string> => {
    const path = join(folder, `${name}-${file}.pem`);
    await writeFile(path, text, { mode: 0o644 });
    return path;
  };
  let serial = 1;
  return {
    file: await write('ca', own.toString('pem')),
    async issue(subject, days = { from: -1, to: 30 }) {
      serial += 1;
      const subjectKeys = await webcrypto.subtle.generateKey(algorithm, true, ['sign', 'verify']);
      const certificate: X509Certificate = await X509CertificateGenerator.create({
        serialNumber: serial.toString(16).padStart(2, '0'),
        subject: `CN=${subject}`,
        issuer: own.subject,
        ...validity(days),
        signingKey: keys.privateKey,
        publicKey: subjectKeys.publicKey,
        signingAlgorithm: algorithm,
        extensions: [
          new SubjectAlternativeNameExtension([{ type: isIP(subject) === 0 ? 'dns' : 'ip', value: subject }]),
        ],
      });
      const pkcs8 = await webcrypto.subtle.exportKey('pkcs8', subjectKeys.privateKey);
      return {
        certificate: await write(`${serial}`, certificate.toString('pem')),
        key: await write(`${serial}-key`, PemConverter.encode(pkcs8, 'PRIVATE KEY')),
      };
    },
  };
}

const validity = ({ from, to }: { readonly from: number; readonly to: number }) => ({
  notBefore: new Date(Date.now() + from * dayMs),
  notAfter: new Date(Date.now() + to * dayMs),
});

import { createPrivateKey, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createSecureContext } from 'node:tls';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { CertificateFiles } from './edge-environment';

/** What a server that speaks TLS is given. */
export interface ServerCertificate {
  readonly cert: Buffer;
  readonly key: Buffer;
  /** RFC 8996 has older ones no longer used. */
  readonly minVersion: 'TLSv1.2';
  /** End of the certificate's own validity, ms since 1970. */
  readonly endsMs: number;
}

/** The names of the variables that the files were given by, for messages. */
export interface CertificateNames {
  readonly certificate: string;
  readonly key: string;
}

/** Reads both files and looks whether they belong together. Told by the names of the variables, never by content. */
export function readServerCertificate(
  files: CertificateFiles,
  names: CertificateNames,
): Result<ServerCertificate, string> {
  const cert = contentOf(files.certificate);
  if (typeof cert === 'string') return fail(`${names.certificate} ${cert}`);
  const key = contentOf(files.key);
  if (typeof key === 'string') return fail(`${names.key} ${key}`);
  try {
    const own = new X509Certificate(cert);
    if (!own.checkPrivateKey(createPrivateKey(key)))
      return fail(`${names.key} does not belong to ${names.certificate}`);
    createSecureContext({ cert, key, minVersion: 'TLSv1.2' });
    return ok({ cert, key, minVersion: 'TLSv1.2', endsMs: Date.parse(own.validTo) });
  } catch {
    // What the library says may show parts of a file; what is wrong can only be one of these.
    return fail(
      `${names.certificate} or ${names.key} is no PEM, is damaged, or the key has a passphrase, which is not supported`,
    );
  }
}

function contentOf(path: string): Buffer | string {
  try {
    return readFileSync(path);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unreadable';
    return `names a file that cannot be read (${code}); check its name and who may read it`;
  }
}

import { readFileSync } from 'node:fs';
import { createSecureContext } from 'node:tls';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';

/** Files in PEM that a secured connection to the broker needs beside what the system trusts; null = not set. */
export interface TlsFiles {
  /** Certificate authorities to trust in place of those of the system. */
  readonly ca: string | null;
  /** This program's own certificate and its key, where the broker asks for them. */
  readonly certificate: string | null;
  readonly key: string | null;
}

export interface TlsMaterial {
  readonly ca?: Buffer;
  readonly cert?: Buffer;
  readonly key?: Buffer;
}

const variables = {
  ca: 'EBBLINE_MQTT_CA_FILE',
  certificate: 'EBBLINE_MQTT_CERTIFICATE_FILE',
  key: 'EBBLINE_MQTT_KEY_FILE',
} as const;

/** Reads the files anew, since certificates are renewed while a program runs. Told by the name of the variable, never by content. */
export function readTlsFiles(files: TlsFiles): Result<TlsMaterial, string> {
  const read: Partial<Record<keyof TlsFiles, Buffer>> = {};
  for (const what of ['ca', 'certificate', 'key'] as const) {
    const file = files[what];
    if (file === null) continue;
    try {
      read[what] = readFileSync(file);
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code ?? 'unreadable';
      return fail(`${variables[what]} names a file that cannot be read (${code}); check its name and who may read it`);
    }
    const wanted =
      what === 'key' ? /-----BEGIN [A-Z ]*PRIVATE KEY-----/ : /-----BEGIN (TRUSTED |X509 )?CERTIFICATE-----/;
    if (!wanted.test(read[what]?.toString('latin1') ?? ''))
      return fail(`${variables[what]} names a file without a ${what === 'key' ? 'private key' : 'certificate'} in PEM`);
  }
  const material: TlsMaterial = {
    ...(read.ca === undefined ? {} : { ca: read.ca }),
    ...(read.certificate === undefined ? {} : { cert: read.certificate }),
    ...(read.key === undefined ? {} : { key: read.key }),
  };
  try {
    createSecureContext(material);
  } catch {
    // What the library says may show parts of a file; what is wrong can only be one of these.
    return fail(
      `${variables.key} does not belong to ${variables.certificate}, has a passphrase (not supported), or a file is damaged`,
    );
  }
  return ok(material);
}

import { statSync } from 'node:fs';
import type { Ticker } from '../../ports/ticker';
import type { CertificateFiles } from './edge-environment';
import { readServerCertificate, type CertificateNames, type ServerCertificate } from './server-certificate';

/** Certificates are renewed days before they end. */
const LOOK_EVERY_MS = 30_000;

export interface Renewal {
  readonly files: CertificateFiles;
  readonly names: CertificateNames;
  readonly ticker: Ticker;
  readonly say: (line: string) => void;
  /** From now on new connections are to get this one. */
  readonly use: (certificate: ServerCertificate) => void;
}

/** Looks at the files from time to time; new ones that are sound are used, others are told of, and the old ones stay. */
export function followCertificate({ files, names, ticker, say, use }: Renewal): { stop(): void } {
  let seen = markOf(files);
  return ticker.every(LOOK_EVERY_MS, () => {
    const now = markOf(files);
    if (now === seen) return;
    seen = now;
    const read = readServerCertificate(files, names);
    if (read.ok) use(read.value);
    say(read.ok ? `${names.certificate}: the renewed certificate is used.` : `${read.fault}; the one before stays.`);
  });
}

/** Whatever changes when one of the files is written or replaced. */
const markOf = ({ certificate, key }: CertificateFiles): string => [certificate, key].map(markOfFile).join(' ');

/** A file that can't be looked at for now (its drive is away, it may no longer be read) is a change like another. */
function markOfFile(path: string): string {
  try {
    const { ino, size, mtimeMs } = statSync(path);
    return `${ino} ${size} ${mtimeMs}`;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code ?? 'unreadable';
  }
}

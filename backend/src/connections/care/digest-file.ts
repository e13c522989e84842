import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';

export interface Digest {
  readonly bytes: number;
  /** SHA-256 (FIPS 180-4) in lower-case hex. */
  readonly sha256: string;
}

/** Length and SHA-256 of a file as it stands on the disk, read piece by piece. */
export async function digestFile(path: string): Promise<Digest> {
  const hash = createHash('sha256');
  let bytes = 0;
  for await (const piece of createReadStream(path) as AsyncIterable<Buffer>) {
    hash.update(piece);
    bytes += piece.length;
  }
  return { bytes, sha256: hash.digest('hex') };
}

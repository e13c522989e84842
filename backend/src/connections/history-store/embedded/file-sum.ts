import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { pipeline } from 'node:stream/promises';

/** SHA-256 of what a file holds, in hexadecimal; null where it can't be read. */
export async function fileSum(path: string): Promise<string | null> {
  const hash = createHash('sha256');
  try {
    await pipeline(createReadStream(path, { highWaterMark: 1 << 20 }), hash);
    return hash.digest('hex');
  } catch {
    return null;
  }
}

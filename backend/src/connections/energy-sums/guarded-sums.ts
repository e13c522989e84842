import { crc32 } from 'node:zlib';

/** Numbers as bytes for the file, as this machine has them. */
export const bytesOf = (sums: Float64Array): Uint8Array =>
  new Uint8Array(sums.buffer, sums.byteOffset, sums.byteLength);

/** The way back; null where it is no whole number of numbers. */
export function sumsOf(bytes: Uint8Array): Float64Array | null {
  if (bytes.length % Float64Array.BYTES_PER_ELEMENT !== 0) return null;
  return new Float64Array(Uint8Array.from(bytes).buffer);
}

/** Check sum over a row with its keys, so that no flipped bit gives another number, another day or another unit. */
export const guardOf = (holder: string, startMs: number, endMs: number, recipe: number, bytes: Uint8Array): number =>
  crc32(bytes, crc32(`${holder} ${startMs} ${endMs} ${recipe}`));

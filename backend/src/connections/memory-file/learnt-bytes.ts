import type { MemoryStore } from '../../ports/memory-store';

type Learnt = Parameters<MemoryStore['save']>[0];

const lengthBytes = 8;
const numberBytes = 8;

/**
 * Length of the head, the head as UTF-8 filled up with spaces to a multiple of eight, then the numbers as doubles as this machine
 * has them: the file is for the next start beside the same data folder, and they are copied in one go.
 */
export function learntBytes({ head, numbers }: Learnt): Uint8Array {
  const text = Buffer.from(head, 'utf8');
  const start = lengthBytes + Math.ceil(text.length / numberBytes) * numberBytes;
  const bytes = new Uint8Array(start + numberBytes * numbers.length);
  new DataView(bytes.buffer).setBigUint64(0, BigInt(start - lengthBytes), true);
  bytes.fill(0x20, lengthBytes, start);
  bytes.set(text, lengthBytes);
  new Float64Array(bytes.buffer, start).set(numbers);
  return bytes;
}

/** The way back; null where the bytes are cut off, or no such file. */
export function learntOf(bytes: Uint8Array): Learnt | null {
  if (bytes.length < lengthBytes) return null;
  const own = Uint8Array.from(bytes);
  const start = lengthBytes + Number(new DataView(own.buffer).getBigUint64(0, true));
  if (start > own.length || start % numberBytes !== 0 || own.length % numberBytes !== 0) return null;
  return {
    head: Buffer.from(own.buffer, lengthBytes, start - lengthBytes).toString('utf8'),
    numbers: new Float64Array(own.buffer, start),
  };
}

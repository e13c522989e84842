import type { Learnt } from '../../evaluation/pipeline/remembered/memory-image';

const lengthBytes = 8;
const numberBytes = 8;

/** Length of the head, the head as UTF-8 filled up with spaces to a multiple of eight, then the numbers as doubles, low byte first. */
export function learntBytes({ head, numbers }: Learnt): Buffer {
  const text = Buffer.from(head, 'utf8');
  const start = lengthBytes + Math.ceil(text.length / numberBytes) * numberBytes;
  const bytes = Buffer.alloc(start + numberBytes * numbers.length, ' ');
  bytes.writeBigUInt64LE(BigInt(start - lengthBytes));
  text.copy(bytes, lengthBytes);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  numbers.forEach((number, place) => view.setFloat64(start + numberBytes * place, number, true));
  return bytes;
}

/** The way back; null where the bytes are cut off, or no such file. */
export function learntOf(bytes: Buffer): Learnt | null {
  if (bytes.length < lengthBytes) return null;
  const start = lengthBytes + Number(bytes.readBigUInt64LE());
  if (start > bytes.length || (bytes.length - start) % numberBytes !== 0) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = (bytes.length - start) / numberBytes;
  return {
    head: bytes.toString('utf8', lengthBytes, start),
    numbers: Float64Array.from({ length: count }, (_, place) => view.getFloat64(start + numberBytes * place, true)),
  };
}

import { crc32 } from 'node:zlib';

/** What stands before the body of a block. Little-endian. */
export interface BlockHeader {
  readonly layoutId: string;
  readonly rows: number;
  /** Values of all rows together. */
  readonly values: number;
  readonly oldestMs: number;
  readonly newestMs: number;
  /** Bytes of the body as it stands in the file, and before it was deflated. */
  readonly storedBytes: number;
  readonly rawBytes: number;
  /** CRC-32 of the body as it stands in the file. */
  readonly bodySum: number;
}

export const headerBytes = 56;
/** "EBQ" and the version of the format. */
export const magic = Buffer.from([0x45, 0x42, 0x51, 1]);
/** Longer ones are none of ours: a damaged length must not ask for memory. */
const longestBody = 1 << 30;
const sumAt = headerBytes - 4;

export function writeHeader(header: BlockHeader): Buffer {
  const bytes = Buffer.alloc(headerBytes);
  magic.copy(bytes);
  bytes.write(header.layoutId, 4, 8, 'hex');
  bytes.writeUInt32LE(header.rows, 12);
  bytes.writeUInt32LE(header.values, 16);
  bytes.writeDoubleLE(header.oldestMs, 20);
  bytes.writeDoubleLE(header.newestMs, 28);
  bytes.writeUInt32LE(header.storedBytes, 36);
  bytes.writeUInt32LE(header.rawBytes, 40);
  bytes.writeUInt32LE(header.bodySum, 44);
  bytes.writeUInt32LE(crc32(bytes.subarray(0, sumAt)), sumAt);
  return bytes;
}

/** Null where no whole header stands at the start of `bytes`. */
export function readHeader(bytes: Buffer): BlockHeader | null {
  if (bytes.length < headerBytes || !bytes.subarray(0, 4).equals(magic)) return null;
  if (bytes.readUInt32LE(sumAt) !== crc32(bytes.subarray(0, sumAt))) return null;
  const header: BlockHeader = {
    layoutId: bytes.toString('hex', 4, 12),
    rows: bytes.readUInt32LE(12),
    values: bytes.readUInt32LE(16),
    oldestMs: bytes.readDoubleLE(20),
    newestMs: bytes.readDoubleLE(28),
    storedBytes: bytes.readUInt32LE(36),
    rawBytes: bytes.readUInt32LE(40),
    bodySum: bytes.readUInt32LE(44),
  };
  return header.storedBytes <= longestBody && header.rawBytes <= longestBody ? header : null;
}

import { open } from 'node:fs/promises';
import { blockBytes, bodyIsWhole } from './block';
import { headerBytes, magic, readHeader, type BlockHeader } from './block-header';

/** A block within its file. */
export interface PlacedBlock extends BlockHeader {
  readonly at: number;
}

export interface ScannedSegment {
  readonly blocks: readonly PlacedBlock[];
  readonly bytes: number;
  /** Bytes that are no whole block: torn by a kill, or damaged. */
  readonly refusedBytes: number;
}

/**
 * Finds the blocks of a file. Bodies are read when they are sent, but for the last one: only that can have been torn by
 * a kill, since each is on the disk before the next is begun. After damage the next whole block is looked for.
 */
export async function scanSegment(path: string): Promise<ScannedSegment> {
  const file = await open(path, 'r');
  try {
    const { size } = await file.stat();
    const blocks: PlacedBlock[] = [];
    let refusedBytes = 0;
    for (let at = 0; at < size;) {
      const start = await bytesAt(file, at, headerBytes);
      const header = readHeader(start);
      const end = header === null ? Infinity : at + blockBytes(header);
      if (header !== null && end <= size && (end < size || (await lastIsWhole(file, at, header)))) {
        blocks.push({ ...header, at });
        at = end;
        continue;
      }
      const next = (await nextHeader(file, at + 1, size)) ?? size;
      refusedBytes += next - at;
      at = next;
    }
    return { blocks, bytes: size, refusedBytes };
  } finally {
    await file.close();
  }
}

type OpenFile = Awaited<ReturnType<typeof open>>;

export async function bytesAt(file: OpenFile, at: number, length: number): Promise<Buffer> {
  const { buffer, bytesRead } = await file.read(Buffer.alloc(length), 0, length, at);
  return buffer.subarray(0, bytesRead);
}

const lastIsWhole = async (file: OpenFile, at: number, header: BlockHeader): Promise<boolean> =>
  bodyIsWhole(header, await bytesAt(file, at + headerBytes, header.storedBytes));

async function nextHeader(file: OpenFile, from: number, size: number): Promise<number | null> {
  const rest = await bytesAt(file, from, size - from);
  for (let at = rest.indexOf(magic); at !== -1; at = rest.indexOf(magic, at + 1)) {
    if (readHeader(rest.subarray(at, at + headerBytes)) !== null) return from + at;
  }
  return null;
}

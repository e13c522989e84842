import { open, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { bytesAt, scanSegment, type PlacedBlock } from './scan-segment';
import { headerBytes } from './block-header';

const digits = 12;
const suffix = '.blocks';

export const segmentName = (ordinal: number): string => `${String(ordinal).padStart(digits, '0')}${suffix}`;

/** Null where the name is not one of a segment. */
export function segmentOrdinal(name: string): number | null {
  const [, number] = new RegExp(`^(\\d{${digits}})\\${suffix}$`).exec(name) ?? [];
  return number === undefined ? null : Number(number);
}

/** One file of the queue: what is left of it to be sent. Blocks are looked up in the file when its turn comes, not kept in memory. */
export class QueueSegment {
  readonly path: string;
  bytes = 0;
  rows = 0;
  oldestMs = Infinity;
  newestMs = -Infinity;
  private blocks: PlacedBlock[] | null = null;

  constructor(
    folder: string,
    readonly ordinal: number,
  ) {
    this.path = join(folder, segmentName(ordinal));
  }

  /** From the file; returns how many of its bytes are no whole block. */
  async load(): Promise<number> {
    const { blocks, bytes, refusedBytes } = await scanSegment(this.path);
    this.bytes = bytes;
    for (const block of blocks) this.count(block);
    return refusedBytes;
  }

  count({ rows, oldestMs, newestMs }: Pick<PlacedBlock, 'rows' | 'oldestMs' | 'newestMs'>): void {
    this.rows += rows;
    this.oldestMs = Math.min(this.oldestMs, oldestMs);
    this.newestMs = Math.max(this.newestMs, newestMs);
  }

  /** The blocks that are left, oldest first, up to so many values, with their bodies. */
  async readFirst(mostValues: number): Promise<{ block: PlacedBlock; body: Buffer }[]> {
    this.blocks ??= [...(await scanSegment(this.path)).blocks];
    const file = await open(this.path, 'r');
    try {
      const read: { block: PlacedBlock; body: Buffer }[] = [];
      let values = 0;
      for (const block of this.blocks) {
        values += block.values;
        if (read.length > 0 && (values > mostValues || block.layoutId !== this.blocks[0]?.layoutId)) break;
        read.push({ block, body: await bytesAt(file, block.at + headerBytes, block.storedBytes) });
      }
      return read;
    } finally {
      await file.close();
    }
  }

  /** Forgets the first blocks; true when none is left. */
  done(count: number): boolean {
    for (const block of this.blocks?.splice(0, count) ?? []) this.rows -= block.rows;
    return (this.blocks?.length ?? 0) === 0;
  }

  async remove(): Promise<void> {
    await rm(this.path, { force: true });
  }
}

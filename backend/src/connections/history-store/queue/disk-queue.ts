import { mkdir, readdir, statfs } from 'node:fs/promises';
import { dirname } from 'node:path';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { HistoryRows } from '../../../evaluation/pipeline/history-rows';
import { SerialQueue } from '../embedded/serial-queue';
import { openBlock, sealBlock } from './block';
import { LayoutFiles } from './layout-files';
import { QueueLosses } from './queue-losses';
import { QueueSegment, segmentOrdinal } from './queue-segment';
import type { QueuedLayout } from './queued-layout';
import { SegmentWriter } from './segment-writer';
import { syncFolder } from './sync-folder';

export interface DiskQueueOptions {
  readonly folder: string;
  /** Most bytes of all blocks together; beyond, the oldest go. */
  readonly limitBytes: number;
  /** So much of the disk stays free for the journal, as if the limit were lower; 3 % of it where not given, at most 1 GiB. */
  readonly keepFreeBytes?: number;
}

export interface QueuedRows {
  readonly rows: HistoryRows;
  readonly layout: QueuedLayout;
}

/** Blocks that are sent at a time, and that a read takes into memory. */
export interface QueuedBatch {
  readonly parts: readonly QueuedRows[];
  readonly segment: QueueSegment;
  readonly blocks: number;
}

const longestSegment = 32 * 2 ** 20;
const fewestSegments = 8;
/** Of one batch, unless its first block alone holds more; it is sent again where the program is killed meanwhile. */
const valuesAtOnce = 100_000;
/** Stays free of a disk, whichever is less: a share, so that rows find room on a small one too. */
const journal = { share: 0.03, mostBytes: 2 ** 30 };

/** Rows that wait on the disk, oldest first, in sealed blocks. They are appended while others are sent; one caller each. */
export class DiskQueue {
  readonly losses = new QueueLosses();
  private readonly layouts: LayoutFiles;
  private readonly segments: QueueSegment[] = [];
  /** Whatever touches the file that is being written, one after the other. */
  private readonly writing = new SerialQueue();
  private writer: SegmentWriter | null = null;
  private nextOrdinal = 1;
  private newest = -Infinity;

  private constructor(private readonly options: DiskQueueOptions) {
    this.layouts = new LayoutFiles(options.folder);
  }

  /** @throws CodedError HISTORY_QUEUE_UNREADABLE */
  static async open(options: DiskQueueOptions): Promise<DiskQueue> {
    const queue = new DiskQueue(options);
    try {
      const made = await mkdir(options.folder, { recursive: true, mode: 0o700 });
      if (made !== undefined) await syncFolder(dirname(made));
      const ordinals = (await readdir(options.folder)).map(segmentOrdinal).filter((ordinal) => ordinal !== null);
      for (const ordinal of ordinals.sort((a, b) => a - b)) await queue.load(ordinal);
    } catch (fault) {
      const why = fault instanceof Error ? fault.message : String(fault);
      const what = `the queue of history in ${options.folder} can't be read (${why}); check its permissions, or move it away`;
      throw new CodedError('HISTORY_QUEUE_UNREADABLE', what);
    }
    return queue;
  }

  get rows(): number {
    return this.segments.reduce((sum, { rows }) => sum + rows, 0);
  }

  get bytes(): number {
    return this.segments.reduce((sum, { bytes }) => sum + bytes, 0);
  }

  get isEmpty(): boolean {
    return this.segments.length === 0;
  }

  /** No row is older; Infinity when nothing waits. */
  get oldestMs(): number {
    return this.segments.reduce((oldest, segment) => Math.min(oldest, segment.oldestMs), Infinity);
  }

  /** No row is newer; −Infinity when nothing waits. */
  get newestMs(): number {
    return this.isEmpty ? -Infinity : this.newest;
  }

  /** Resolves once they are on the disk: from then on they survive a kill. */
  append(parts: readonly QueuedRows[]): Promise<void> {
    return this.writing.run(() => this.write(parts));
  }

  private async write(parts: readonly QueuedRows[]): Promise<void> {
    const sealed: Awaited<ReturnType<typeof sealBlock>>[] = [];
    for (const { rows, layout } of parts) {
      await this.layouts.keep(layout);
      sealed.push(await sealBlock(rows, layout));
    }
    const bytes = Buffer.concat(sealed.map((block) => block.bytes));
    await this.makeRoom(bytes.length);
    const writer = await this.openWriter();
    try {
      await writer.append(bytes);
    } catch (fault) {
      await this.endWriter();
      throw fault;
    }
    if (!this.segments.includes(writer.segment)) this.segments.push(writer.segment);
    for (const { header } of sealed) {
      writer.segment.count(header);
      this.newest = Math.max(this.newest, header.newestMs);
    }
    if (writer.segment.bytes >= this.segmentBytes) await this.endWriter();
  }

  /** The oldest blocks; null when nothing waits. What can't be read is passed over and counted. */
  async first(): Promise<QueuedBatch | null> {
    for (let segment = this.segments[0]; segment !== undefined; segment = this.segments[0]) {
      // What is being sent is not written to any more: its blocks are looked up once.
      if (this.writer?.segment === segment) await this.writing.run(() => this.endWriter());
      const read = await segment.readFirst(valuesAtOnce).catch((fault: unknown) => {
        // Given way meanwhile: counted already.
        if (this.segments[0] !== segment) return null;
        if ((fault as NodeJS.ErrnoException).code !== 'ENOENT') throw fault;
        this.losses.removed(segment.rows);
        this.leave(segment);
        return null;
      });
      if (read === null) continue;
      const parts: QueuedRows[] = [];
      for (const { block, body } of read) {
        const layout = await this.layouts.find(block.layoutId);
        const rows = layout === null ? null : await openBlock(block, body, layout).catch(() => null);
        if (rows === null || layout === null) this.losses.refused(block.rows);
        else parts.push({ rows, layout });
      }
      const batch = { parts, segment, blocks: read.length };
      if (parts.length > 0) return batch;
      await this.done(batch);
    }
    return null;
  }

  /** Those are kept elsewhere now; false where they had given way to newer rows meanwhile. */
  async done({ segment, blocks }: QueuedBatch): Promise<boolean> {
    if (this.segments[0] !== segment) return false;
    if (!segment.done(blocks)) return true;
    if (segment.rows > 0) this.losses.refused(segment.rows);
    this.leave(segment);
    await segment.remove();
    return true;
  }

  /** The oldest one is no longer waited for. */
  private leave(segment: QueueSegment): void {
    if (this.segments[0] === segment) this.segments.shift();
    if (this.isEmpty) this.newest = -Infinity;
  }

  async close(): Promise<void> {
    await this.writing.run(() => this.endWriter());
    if (this.isEmpty) await this.layouts.clear();
  }

  private get segmentBytes(): number {
    return Math.min(longestSegment, this.options.limitBytes / fewestSegments);
  }

  private async load(ordinal: number): Promise<void> {
    const segment = new QueueSegment(this.options.folder, ordinal);
    this.losses.torn(await segment.load());
    this.nextOrdinal = ordinal + 1;
    if (segment.rows === 0) return segment.remove();
    this.segments.push(segment);
    this.newest = Math.max(this.newest, segment.newestMs);
  }

  private async openWriter(): Promise<SegmentWriter> {
    this.writer ??= await SegmentWriter.create(
      this.options.folder,
      new QueueSegment(this.options.folder, this.nextOrdinal++),
    );
    return this.writer;
  }

  private async endWriter(): Promise<void> {
    const writer = this.writer;
    this.writer = null;
    await writer?.close();
    if (writer !== null && writer.segment.rows === 0) await writer.segment.remove();
  }

  private async makeRoom(bytes: number): Promise<void> {
    const { folder, limitBytes } = this.options;
    const { bavail, blocks, bsize } = await statfs(folder);
    const { keepFreeBytes = Math.min(journal.share * blocks * bsize, journal.mostBytes) } = this.options;
    let free = bavail * bsize - keepFreeBytes - bytes;
    for (let oldest = this.segments[0]; oldest !== undefined; oldest = this.segments[0]) {
      if (this.bytes + bytes <= limitBytes && free >= 0) return;
      if (this.writer?.segment === oldest) await this.endWriter();
      this.losses.overflowed(oldest.rows, oldest.oldestMs, oldest.newestMs);
      this.leave(oldest);
      free += oldest.bytes;
      await oldest.remove();
    }
  }
}

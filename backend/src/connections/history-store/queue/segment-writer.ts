import { open, type FileHandle } from 'node:fs/promises';
import { syncFolder } from './sync-folder';
import type { QueueSegment } from './queue-segment';

/** Appends to one segment. Each call is on the disk when it resolves; after a fault the file ends where it did before. */
export class SegmentWriter {
  private constructor(
    readonly segment: QueueSegment,
    private readonly file: FileHandle,
  ) {}

  static async create(folder: string, segment: QueueSegment): Promise<SegmentWriter> {
    const writer = new SegmentWriter(segment, await open(segment.path, 'wx', 0o600));
    await syncFolder(folder);
    return writer;
  }

  async append(bytes: Buffer): Promise<void> {
    const { segment, file } = this;
    try {
      await file.write(bytes, 0, bytes.length, segment.bytes);
      await file.datasync();
      segment.bytes += bytes.length;
    } catch (fault) {
      await file.truncate(segment.bytes).catch(() => undefined);
      throw fault;
    }
  }

  async close(): Promise<void> {
    await this.file.close();
  }
}

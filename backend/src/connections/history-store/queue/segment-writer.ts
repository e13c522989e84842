import { open, type FileHandle } from 'node:fs/promises';
import { CodedError } from '@ebbline/shared/errors/coded-error';
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

  /** @throws CodedError HISTORY_WRITE_FAILED where the disk takes a part, and the system's own faults */
  async append(bytes: Buffer): Promise<void> {
    const { segment, file } = this;
    try {
      await this.writeAll(bytes);
      await file.datasync();
      segment.bytes += bytes.length;
    } catch (fault) {
      await file.truncate(segment.bytes).catch(() => undefined);
      throw fault;
    }
  }

  /** A call may write fewer bytes than it was given, as where a disk is nearly full, and is no fault then. */
  private async writeAll(bytes: Buffer): Promise<void> {
    for (let at = 0; at < bytes.length;) {
      const { bytesWritten } = await this.file.write(bytes, at, bytes.length - at, this.segment.bytes + at);
      if (bytesWritten === 0) {
        const what = `the disk took ${at} of ${bytes.length} bytes and no more; make room on it`;
        throw new CodedError('HISTORY_WRITE_FAILED', what);
      }
      at += bytesWritten;
    }
  }

  async close(): Promise<void> {
    await this.file.close();
  }
}

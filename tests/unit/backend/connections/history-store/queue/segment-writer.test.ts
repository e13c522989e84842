import { open, readFile, type FileHandle } from 'node:fs/promises';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { QueueSegment } from '../../../../../../backend/src/connections/history-store/queue/queue-segment';
import { SegmentWriter } from '../../../../../../backend/src/connections/history-store/queue/segment-writer';
import { stopAfterEach } from '../../../../../helpers/stop-after';
import { temporaryFolder } from '../../../../../helpers/temporary-folder';

const keep = stopAfterEach();
afterEach(() => vi.restoreAllMocks());

type Write = (buffer: Buffer, offset: number, length: number, position: number) => Promise<{ bytesWritten: number }>;

/** A file system that takes so many bytes of each call, as write(2) may where a disk or a quota is nearly used up. */
async function takesAtMost(bytesOf: (call: number) => number): Promise<void> {
  const handle = await open('.', 'r');
  const prototype = Object.getPrototypeOf(handle) as { write: Write };
  await handle.close();
  const whole = prototype.write;
  let call = 0;
  vi.spyOn(prototype, 'write').mockImplementation(function (this: FileHandle, buffer, offset, length, position) {
    const most = Math.min(length, bytesOf(call++));
    return most === 0 ? Promise.resolve({ bytesWritten: 0 }) : whole.call(this, buffer, offset, most, position);
  });
}

async function writerInFolder(): Promise<SegmentWriter> {
  const { path } = keep(await temporaryFolder());
  const writer = await SegmentWriter.create(path, new QueueSegment(path, 1));
  keep({ stop: () => writer.close() });
  return writer;
}

describe('the writer of a segment', () => {
  it('goes on where the system takes a part of the bytes, until all are in the file', async () => {
    const writer = await writerInFolder();
    await takesAtMost(() => 7);
    await writer.append(Buffer.from('the first block'));
    await writer.append(Buffer.from(', the second block'));
    expect(await readFile(writer.segment.path, 'utf8')).toBe('the first block, the second block');
    expect(writer.segment.bytes).toBe(33);
  });

  it('confirms no block of which the system takes a part and then no more, and leaves the file as it was', async () => {
    const writer = await writerInFolder();
    await writer.append(Buffer.from('whole'));
    await takesAtMost((call) => (call === 0 ? 3 : 0));
    await expect(writer.append(Buffer.from('torn block'))).rejects.toMatchObject({ code: 'HISTORY_WRITE_FAILED' });
    expect(await readFile(writer.segment.path, 'utf8')).toBe('whole');
    expect(writer.segment.bytes).toBe(5);
  });
});

import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { DiskQueue } from '../../../../../../backend/src/connections/history-store/queue/disk-queue';
import { queuedLayout } from '../../../../../../backend/src/connections/history-store/queue/queued-layout';
import { stopAfterEach } from '../../../../../helpers/stop-after';
import { temporaryFolder } from '../../../../../helpers/temporary-folder';
import { layout, pressures, second, startMs } from '../../../../../contract/history-samples';

const room = vi.hoisted(() => ({ diskBytes: 0, freeBytes: 0 }));
vi.mock('node:fs/promises', async (original) => ({
  ...(await original<object>()),
  statfs: () => Promise.resolve({ bsize: 1, blocks: room.diskBytes, bavail: room.freeBytes }),
}));

const keep = stopAfterEach();

/** Rows of three that were lost where a disk has so much room. */
async function lostOn(diskBytes: number, freeBytes: number): Promise<number> {
  Object.assign(room, { diskBytes, freeBytes });
  const queue = await DiskQueue.open({
    folder: join(keep(await temporaryFolder()).path, 'queue'),
    limitBytes: 2 ** 30,
  });
  keep({ stop: () => queue.close() });
  const named = queuedLayout(layout);
  for (let at = 0; at < 3; at++)
    await queue.append([{ rows: pressures(startMs + at * second, 1, () => at), layout: named }]);
  return queue.losses.rowsLost;
}

describe('what the queue leaves free of the disk for the journal', () => {
  it('is 3 % of a small disk, so that rows are kept on it', async () => {
    expect(await lostOn(2e9, 61e6)).toBe(0);
    expect(await lostOn(2e9, 59e6)).toBe(2);
  });

  it('is never more than 1 GiB of a large one', async () => {
    expect(await lostOn(1e12, 1.1e9)).toBe(0);
    expect(await lostOn(1e12, 1e9)).toBe(2);
  });
});

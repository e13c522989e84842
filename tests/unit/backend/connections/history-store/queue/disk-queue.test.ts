import { appendFile, readdir, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { DiskQueue } from '../../../../../../backend/src/connections/history-store/queue/disk-queue';
import { queuedLayout } from '../../../../../../backend/src/connections/history-store/queue/queued-layout';
import { stopAfterEach } from '../../../../../helpers/stop-after';
import { temporaryFolder } from '../../../../../helpers/temporary-folder';
import { layout, pressures, second, startMs } from '../../../../../contract/history-samples';

const keep = stopAfterEach();
const named = queuedLayout(layout);
const roomy = 2 ** 30;

const rowsAt = (index: number, count = 1) => ({
  rows: pressures(startMs + index * second, count, (at) => index + at),
  layout: named,
});

async function open(folder: string, limitBytes = roomy, keepFreeBytes = 0): Promise<DiskQueue> {
  const queue = await DiskQueue.open({ folder, limitBytes, keepFreeBytes });
  keep({ stop: () => queue.close() });
  return queue;
}
async function folderAndQueue(limitBytes = roomy): Promise<{ folder: string; queue: DiskQueue }> {
  const folder = join(keep(await temporaryFolder()).path, 'queue');
  return { folder, queue: await open(folder, limitBytes) };
}
const segmentsOf = async (folder: string): Promise<string[]> =>
  (await readdir(folder)).filter((name) => name.endsWith('.blocks')).map((name) => join(folder, name));

/** Takes all there is out of it: seconds after the start, in the order in which they come. */
async function drained(queue: DiskQueue): Promise<number[]> {
  const seconds: number[] = [];
  for (let batch = await queue.first(); batch !== null; batch = await queue.first()) {
    for (const { rows } of batch.parts)
      for (let row = 0; row < rows.count; row++) seconds.push(((rows.secondMs[row] ?? NaN) - startMs) / second);
    await queue.done(batch);
  }
  return seconds;
}
const upTo = (count: number, from = 0): number[] => Array.from({ length: count - from }, (_, i) => from + i);

describe('the queue on the disk', () => {
  it('gives rows back in their order, once, while others are appended, and leaves nothing behind', async () => {
    const { folder, queue } = await folderAndQueue();
    for (let i = 0; i < 5; i++) await queue.append([rowsAt(i)]);
    const batch = await queue.first();
    await queue.append([rowsAt(5), rowsAt(6)]);
    expect(batch?.parts).toHaveLength(5);
    if (batch !== null) await queue.done(batch);
    expect(queue).toMatchObject({ rows: 2, oldestMs: startMs + 5 * second, newestMs: startMs + 6 * second });
    expect(await drained(queue)).toEqual([5, 6]);
    expect(queue).toMatchObject({ rows: 0, bytes: 0, isEmpty: true, oldestMs: Infinity, newestMs: -Infinity });
    await queue.close();
    expect(await readdir(folder)).toEqual([]);
  });

  it('has after a restart what was not taken before it', async () => {
    const { folder, queue } = await folderAndQueue();
    for (let i = 0; i < 4; i++) await queue.append([rowsAt(i)]);
    const again = await open(folder);
    await again.append([rowsAt(4)]);
    expect(again).toMatchObject({ rows: 5, oldestMs: startMs, newestMs: startMs + 4 * second });
    expect(await drained(again)).toEqual(upTo(5));
    expect(again.losses.told).toEqual([]);
  });

  it('refuses a block that a kill tore, at whatever byte, says so, and has all before it', async () => {
    const { folder, queue } = await folderAndQueue();
    for (let i = 0; i < 2; i++) await queue.append([rowsAt(i)]);
    const whole = queue.bytes;
    await queue.append([rowsAt(2)]);
    const [path = ''] = await segmentsOf(folder);
    const bytes = await readFile(path);
    for (let length = bytes.length - 1; length > whole; length--) {
      await writeFile(path, bytes.subarray(0, length));
      const again = await open(folder);
      expect(again.rows).toBe(2);
      expect(again.losses.told.join()).toContain(`a block of ${length - whole} bytes was torn`);
      expect(again.losses.rowsLost).toBe(0);
    }
    await truncate(path, whole + 1);
    expect(await drained(await open(folder))).toEqual([0, 1]);
  });

  it('passes over what was damaged in the middle, counts it, and goes on after it', async () => {
    const { folder, queue } = await folderAndQueue();
    await queue.append([rowsAt(0)]);
    const before = queue.bytes;
    await queue.append([rowsAt(1)]);
    const after = queue.bytes;
    await queue.append([rowsAt(2)]);
    const [path = ''] = await segmentsOf(folder);
    const bytes = await readFile(path);

    const body = Buffer.from(bytes);
    body[after - 1] = (body[after - 1] ?? 0) ^ 1;
    await writeFile(path, body);
    const bodyDamaged = await open(folder);
    expect(await drained(bodyDamaged)).toEqual([0, 2]);
    expect(bodyDamaged.losses).toMatchObject({ rowsLost: 1 });

    const header = Buffer.from(bytes);
    header[before + 20] = (header[before + 20] ?? 0) ^ 1;
    await writeFile(path, header);
    expect(await drained(await open(folder))).toEqual([0, 2]);
  });

  it('never grows beyond its bound: the oldest rows go, and their number and time are told', async () => {
    const limitBytes = 8000;
    const { queue } = await folderAndQueue(limitBytes);
    for (let i = 0; i < 200; i++) {
      await queue.append([rowsAt(i)]);
      expect(queue.bytes).toBeLessThanOrEqual(limitBytes);
    }
    const { rowsLost, told } = queue.losses;
    expect(rowsLost).toBeGreaterThan(0);
    expect(rowsLost + queue.rows).toBe(200);
    expect(told.join()).toContain(
      `${rowsLost} rows lost since the start, of 2025-06-01T00:00:00.000Z to ${new Date(startMs + (rowsLost - 1) * second).toISOString()}`,
    );
    expect(await drained(queue)).toEqual(upTo(200, rowsLost));
  });

  it('goes on rightly where the rows that are being sent give way to newer ones', async () => {
    const { queue } = await folderAndQueue(2000);
    for (let i = 0; i < 10; i++) await queue.append([rowsAt(i)]);
    const taken = await queue.first();
    for (let i = 10; i < 60; i++) await queue.append([rowsAt(i)]);
    if (taken !== null) await queue.done(taken);
    expect(await drained(queue)).toEqual(upTo(60, queue.losses.rowsLost));
  });

  it('counts as lost what was left of a file that someone removed while it was being sent, and goes on behind it', async () => {
    const { folder, queue } = await folderAndQueue();
    await queue.append([rowsAt(0)]);
    await queue.append([{ ...rowsAt(1), layout: queuedLayout({ holders: layout.holders.slice(0, 1) }) }]);
    const sent = await queue.first();
    await queue.append([rowsAt(2)]);
    const [first = ''] = (await segmentsOf(folder)).sort();
    await rm(first);
    if (sent !== null) await queue.done(sent);
    expect(await drained(queue)).toEqual([2]);
    expect(queue.losses.rowsLost).toBe(1);
    expect(queue.losses.told).toEqual(['1 rows lost since the start: their file was removed']);
  });

  it('knows its newest row from the first append on, in whatever order the blocks come', async () => {
    const { queue } = await folderAndQueue();
    await queue.append([rowsAt(5), rowsAt(2)]);
    expect(queue.newestMs).toBe(startMs + 5 * second);
  });

  it('yields to a disk that others fill, as its journal is worth more', async () => {
    const { folder, queue } = await folderAndQueue();
    for (let i = 0; i < 3; i++) await queue.append([rowsAt(i)]);
    const tight = await open(folder, roomy, Number.MAX_SAFE_INTEGER);
    await tight.append([rowsAt(3)]);
    expect(tight.losses.rowsLost).toBe(3);
    expect(await drained(tight)).toEqual([3]);
  });

  it('needs at most 9 bytes and a bit a value, and less where values repeat', async () => {
    const { queue } = await folderAndQueue();
    await queue.append([{ rows: pressures(startMs, 3600, () => 93_250), layout: named }]);
    expect(queue.bytes).toBeLessThan(3600 * 3 * 9);
  });

  it('says what to do where its folder is none', async () => {
    const path = keep(await temporaryFolder()).path;
    const file = join(path, 'queue');
    await appendFile(file, 'no folder');
    await expect(open(file)).rejects.toMatchObject({ code: 'HISTORY_QUEUE_UNREADABLE' });
  });
});

import { join } from 'node:path';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { DiskQueue, type QueuedRows } from '../../../../../../backend/src/connections/history-store/queue/disk-queue';
import { queuedLayout } from '../../../../../../backend/src/connections/history-store/queue/queued-layout';
import { QueuedSender } from '../../../../../../backend/src/connections/history-store/queue/queued-sender';
import type { Refusal } from '../../../../../../backend/src/connections/history-store/queue/refusal';
import { temporaryFolder, type TemporaryFolder } from '../../../../../helpers/temporary-folder';
import { until } from '../../../../../helpers/until';
import { layout, pressures, second, startMs } from '../../../../../contract/history-samples';

const named = queuedLayout(layout);
const other = queuedLayout({ holders: layout.holders.slice(0, 1) });
const rowsAt = (from: number, count = 1, value = 0): QueuedRows => ({
  rows: pressures(startMs + from * second, count, () => value),
  layout: named,
});

let folder: TemporaryFolder;
let disk: DiskQueue;
let sender: QueuedSender;
/** What the server has: its fault, or a promise that it waits for. */
let server: { fault: CodedError | null; until: Promise<void>; afterEach: () => void; refuses: (at: number) => boolean };
/** `second:value`, as the server took them. */
let taken: string[];

const never = new CodedError('NEVER', 'another type');

async function send(parts: readonly QueuedRows[]): Promise<Refusal | null> {
  await server.until;
  if (server.fault !== null) throw server.fault;
  let refused = 0;
  for (const { rows } of parts)
    for (let row = 0; row < rows.count; row++) {
      const value = rows.values[rows.offset[row] ?? NaN] ?? NaN;
      const at = ((rows.secondMs[row] ?? NaN) - startMs) / second;
      if (server.refuses(at)) refused += 1;
      else taken.push(`${at}:${value}`);
    }
  server.afterEach();
  return refused === 0 ? null : { rows: refused, fault: never };
}
const away = new CodedError('HISTORY_WRITE_FAILED', 'refused');
const openDisk = (): Promise<DiskQueue> =>
  DiskQueue.open({ folder: join(folder.path, 'queue'), limitBytes: 2 ** 30, keepFreeBytes: 0 });
const start = (): QueuedSender => new QueuedSender({ disk, send });

async function restart(): Promise<void> {
  await sender.close();
  disk = await openDisk();
  sender = start();
}

async function begin(): Promise<void> {
  folder = await temporaryFolder();
  disk = await openDisk();
  server = { fault: null, until: Promise.resolve(), afterEach: () => undefined, refuses: () => false };
  taken = [];
  sender = start();
}
async function end(): Promise<void> {
  vi.useRealTimers();
  await sender.close();
  await folder.stop();
}
beforeEach(begin);
afterEach(end);

describe('the sender of rows to a server', () => {
  it('confirms rows once the server has them, and touches the disk no time while it answers', async () => {
    await Promise.all([sender.write(rowsAt(0)), sender.write(rowsAt(1))]);
    expect(taken).toEqual(['0:0', '1:0']);
    expect(sender).toMatchObject({ rowsQueued: 0, oldestMs: Infinity, trouble: null, losses: [] });
    expect(disk.bytes).toBe(0);
  });

  it('confirms rows once they are on the disk while the server is away, and fills them in, in their order, when it is back', async () => {
    await sender.write(rowsAt(0));
    server.fault = away;
    for (let i = 1; i < 6; i++) await sender.write(rowsAt(i));
    expect(disk.rows).toBe(5);
    expect(sender).toMatchObject({ rowsQueued: 5, oldestMs: startMs + second, trouble: away.message });
    server.fault = null;
    await sender.flush();
    expect(taken).toEqual(['0:0', '1:0', '2:0', '3:0', '4:0', '5:0']);
    expect(sender).toMatchObject({ rowsQueued: 0, oldestMs: Infinity, trouble: null, losses: [] });
  });

  it('sends new rows before what waits on the disk, but never a second before an older word on it', async () => {
    server.fault = away;
    await sender.write(rowsAt(0, 3, 1));
    await until(() => disk.rows === 3);
    let open = (): void => undefined;
    server.fault = null;
    server.until = new Promise((resolve) => (open = resolve));
    const flushed = sender.flush();
    await until(() => sender.trouble === null || disk.rows === 3);
    // The server is still taken for away until it has answered: this one waits on the disk too.
    await sender.write(rowsAt(3, 1, 1));
    open();
    await flushed;
    server.fault = away;
    await sender.write(rowsAt(4, 1, 1));
    server.fault = null;
    await sender.flush();
    // A correction of a second that is already there, and one that came late.
    await sender.write(rowsAt(4, 2, 2));
    expect(taken).toEqual(['0:1', '1:1', '2:1', '3:1', '4:1', '4:2', '5:2']);
  });

  it('splits rows: what corrects a second that waits on the disk queues up behind it, newer ones go straight', async () => {
    server.fault = away;
    await sender.write(rowsAt(0, 2, 1));
    // Another layout is another request.
    await sender.write({ rows: pressures(startMs + 2 * second, 1, () => 1), layout: other });
    server.fault = null;
    let answer = (): void => undefined;
    server.afterEach = () => {
      server.until = new Promise((resolve) => (answer = resolve));
    };
    const flushed = sender.flush();
    await until(() => taken.length === 2);
    server.afterEach = () => undefined;
    const write = sender.write(rowsAt(1, 3, 2));
    await until(() => disk.rows === 3);
    answer();
    await Promise.all([flushed, write]);
    expect(taken).toEqual(['0:1', '1:1', '2:1', '3:2', '1:2', '2:2']);
  });

  it('leaves the last word of every second on the server, whatever server and program do meanwhile', async () => {
    const step = fc.oneof(
      { weight: 5, arbitrary: fc.record({ from: fc.nat(6), count: fc.integer({ min: 1, max: 3 }) }) },
      { weight: 3, arbitrary: fc.constantFrom('away' as const, 'back' as const, 'flush' as const, 'restart' as const) },
    );
    let value = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 25 }), async (steps) => {
        await end();
        await begin();
        const wanted = new Map<number, number>();
        for (const one of steps) {
          if (one === 'away') server.fault = away;
          else if (one === 'back') server.fault = null;
          else if (one === 'flush') await sender.flush();
          else if (one === 'restart') await restart();
          else {
            value += 1;
            for (let at = one.from; at < one.from + one.count; at++) wanted.set(at, value);
            const write = sender.write(rowsAt(one.from, one.count, value));
            if (value % 2 === 0) await write;
          }
        }
        server.fault = null;
        await sender.flush();
        const last = new Map(taken.map((text) => text.split(':').map(Number) as [number, number]));
        expect(last).toEqual(wanted);
        expect([sender.rowsQueued, ...sender.losses]).toEqual([0]);
      }),
      { numRuns: 60 },
    );
  });

  it('waits no longer than 2 s for a server that does not answer: the rows go to the disk, and are sent again', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    let answer = (): void => undefined;
    server.until = new Promise((resolve) => (answer = resolve));
    const write = sender.write(rowsAt(0));
    await vi.advanceTimersByTimeAsync(1999);
    expect([disk.rows, sender.trouble]).toEqual([0, null]);
    await vi.advanceTimersByTimeAsync(1);
    await write;
    expect(sender.trouble).toContain('has not answered for 2 s');
    await sender.write(rowsAt(1));
    expect(disk.rows).toBe(2);
    vi.useRealTimers();
    answer();
    await until(() => sender.rowsQueued === 0);
    // Once more than needed, never once too seldom: a server merges rows of one unit and second.
    expect(taken).toEqual(['0:0', '0:0', '1:0']);
    expect(sender).toMatchObject({ trouble: null, losses: [] });
  });

  it('holds a newer word back behind one that is still being put aside though the server has answered by now', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    let answer = (): void => undefined;
    server.until = new Promise((resolve) => (answer = resolve));
    let takeDown = (): void => undefined;
    const slowDisk = new Promise<void>((resolve) => (takeDown = resolve));
    const append = disk.append.bind(disk);
    vi.spyOn(disk, 'append').mockImplementation((parts) => slowDisk.then(() => append(parts)));
    const older = sender.write(rowsAt(0, 1, 1));
    await vi.advanceTimersByTimeAsync(2000);
    vi.useRealTimers();
    answer();
    await older;
    await until(() => sender.trouble === null);
    const newer = sender.write(rowsAt(0, 1, 2));
    takeDown();
    await newer;
    await until(() => sender.rowsQueued === 0 && taken.length === 3);
    expect(taken).toEqual(['0:1', '0:1', '0:2']);
  });

  it('keeps rows in memory while the disk takes none, tells why, and sends them from there', async () => {
    vi.spyOn(disk, 'append').mockRejectedValue(new Error('ENOSPC: no space left on device'));
    server.fault = away;
    const writes = [0, 1, 2].map((at) => sender.write(rowsAt(at)));
    await until(() => sender.trouble?.includes('ENOSPC') === true);
    expect(sender.rowsQueued).toBe(3);
    server.fault = null;
    await sender.flush();
    await Promise.all(writes);
    expect(taken).toEqual(['0:0', '1:0', '2:0']);
  });

  it('gives the oldest in memory up, aloud, where neither server nor disk takes rows', async () => {
    await sender.close();
    sender = new QueuedSender({ disk, send, memoryBytes: 200 });
    vi.spyOn(disk, 'append').mockRejectedValue(new Error('ENOSPC'));
    server.fault = away;
    // A row is 4 + 8 + 4 + 3 × 9 = 43 bytes; 200 bytes hold four.
    const writes = [0, 1, 2, 3, 4].map((at) => sender.write(rowsAt(at)));
    await expect(writes[0]).rejects.toMatchObject({ code: 'HISTORY_QUEUE_FULL' });
    expect(sender).toMatchObject({ rowsQueued: 4, rowsLost: 1 });
    expect(sender.losses.join()).toContain('1 rows lost since the start');
    const closing = sender.close();
    for (const write of writes.slice(1)) await expect(write).rejects.toMatchObject({ code: 'HISTORY_CLOSED' });
    await closing;
  });

  it('gives up rows that the server will never take, tells it, and goes on behind them', async () => {
    server.refuses = (at) => at === 0;
    await expect(sender.write(rowsAt(0))).rejects.toMatchObject({ code: 'NEVER' });
    await sender.write(rowsAt(1));
    expect(taken).toEqual(['1:0']);
    expect(sender.trouble).toBeNull();
    expect(sender.losses).toEqual(['1 rows lost since the start: the server refused them (NEVER: another type)']);
  });

  it('loses of a batch from the disk only what the server refuses, and tells that it was the server', async () => {
    server.fault = away;
    for (let at = 0; at < 4; at++) await sender.write(rowsAt(at));
    server.fault = null;
    server.refuses = (at) => at === 1;
    await sender.flush();
    expect(taken).toEqual(['0:0', '2:0', '3:0']);
    expect(sender).toMatchObject({ rowsQueued: 0, rowsLost: 1, trouble: null });
    expect(sender.losses).toEqual(['1 rows lost since the start: the server refused them (NEVER: another type)']);
  });

  it('puts what is under way aside when it is closed, and the next one sends it', async () => {
    server.until = new Promise(() => undefined);
    const writes = [sender.write(rowsAt(0)), sender.write(rowsAt(1))];
    await sender.close();
    await Promise.all(writes);
    await expect(sender.write(rowsAt(2))).rejects.toMatchObject({ code: 'HISTORY_CLOSED' });
    server.until = Promise.resolve();
    await restart();
    await until(() => sender.rowsQueued === 0);
    expect(taken).toEqual(['0:0', '1:0']);
  });
});

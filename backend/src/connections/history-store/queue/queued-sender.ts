import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { DiskQueue, QueuedRows } from './disk-queue';
import type { Refusal } from './refusal';
import { splitRows } from './split-rows';
import { WaitingWrites, waitingWrite, type WaitingWrite } from './waiting-writes';

export interface QueuedSenderOptions {
  readonly disk: DiskQueue;
  /** Commits rows of one layout, but for what it refuses; with any fault they are all sent again later. */
  readonly send: (parts: readonly QueuedRows[]) => Promise<Refusal | null>;
  /** Most bytes of rows in memory, where the disk takes none either. */
  readonly memoryBytes?: number;
}

/** What is to be sent next, and what becomes of it. */
interface Sending {
  readonly parts: readonly QueuedRows[];
  /** False where they were no longer there: then nothing has become of them. */
  readonly done: (refusal: Refusal | null) => Promise<boolean> | boolean;
}

const defaultMemoryBytes = 256e6;
/** A server that refused is asked again so much later, or with the next call. */
const retryAfterMs = 2000;
/** A server that takes longer over an answer is waited for no more: what comes meanwhile goes to the disk. */
const slowAfterMs = 2000;
/** Writes that go to the disk in one go. */
const mostAtOnce = 64;

/**
 * Hands rows to a server, one request in flight, or to the disk while the server is away. Rows of one unit and second
 * reach the server in the order in which they came, for the last one counts: only rows newer than all that waits on
 * the disk go straight, the others queue up behind.
 */
export class QueuedSender {
  private readonly waiting: WaitingWrites;
  private sending: Promise<void> | null = null;
  private spilling: Promise<void> | null = null;
  private retry: ReturnType<typeof setTimeout> | undefined;
  /** Until the next attempt nothing is sent. */
  private paused = false;
  /** Until the next attempt nothing is put aside. */
  private diskPaused = false;
  /** On their way to the disk, though the server may have taken them meanwhile. */
  private appending: readonly WaitingWrite[] = [];
  private slow = false;
  private serverFault: string | null = null;
  private diskFault: string | null = null;
  private rowsRefused = 0;
  private lastRefusal = '';
  /** The server has been asked and has not answered. */
  private asking = false;
  private closed = false;

  constructor(private readonly options: QueuedSenderOptions) {
    this.waiting = new WaitingWrites(options.memoryBytes ?? defaultMemoryBytes);
    this.wake();
  }

  get rowsQueued(): number {
    return this.waiting.rows + this.options.disk.rows;
  }

  get rowsLost(): number {
    return this.waiting.rowsLost + this.rowsRefused + this.options.disk.losses.rowsLost;
  }

  /** The oldest row that the server does not have yet, ms; Infinity where it has them all. */
  get oldestMs(): number {
    return this.waiting.all.reduce((oldest, one) => Math.min(oldest, one.oldestMs), this.options.disk.oldestMs);
  }

  /** Null while the server takes rows, or is not needed. */
  get trouble(): string | null {
    const slow = this.slow ? `the server has not answered for ${slowAfterMs / 1000} s` : null;
    return [this.serverFault ?? slow, this.diskFault].filter((fault) => fault !== null).join('; ') || null;
  }

  /** What could not be kept, for health. */
  get losses(): string[] {
    const { rowsLost } = this.waiting;
    const refused = `${this.rowsRefused} rows lost since the start: the server refused them (${this.lastRefusal})`;
    return [
      ...(rowsLost === 0 ? [] : [`${rowsLost} rows lost since the start: neither server nor disk took them`]),
      ...(this.rowsRefused === 0 ? [] : [refused]),
      ...this.options.disk.losses.told,
    ];
  }

  /** Resolves once the rows are on the server or on the disk, rejects where they are given up. */
  async write(rows: QueuedRows): Promise<void> {
    if (this.closed) throw new CodedError('HISTORY_CLOSED', 'the history store is closed');
    const { until, after } = this.split(rows);
    const writes = [until, after].map((part) => (part === null ? null : waitingWrite({ ...rows, rows: part })));
    const [spilled = null, direct = null] = writes;
    if (spilled !== null) this.waiting.spill.push(spilled);
    if (direct !== null) this.waiting.direct.push(direct);
    this.waiting.bound();
    this.wake();
    await Promise.all([spilled?.kept, direct?.kept]);
  }

  /** Sends what waits; resolves when nothing waits or the server is away. */
  async flush(): Promise<void> {
    this.paused = false;
    this.wake();
    while (this.sending !== null || this.spilling !== null) await Promise.all([this.sending, this.spilling]);
  }

  /** What the server has not taken goes to the disk; what that does not take either is given up. */
  async close(): Promise<void> {
    if (this.closed) return;
    this.closed = true;
    clearTimeout(this.retry);
    this.waiting.divert();
    await this.spilling;
    if (!this.asking) await this.sending;
    await this.spillAll();
    const what = 'the store was closed before they were written';
    for (const write of this.waiting.all) this.waiting.giveUp(write, 'HISTORY_CLOSED', what);
    await this.options.disk.close();
  }

  private split(rows: QueuedRows): ReturnType<typeof splitRows> {
    if (this.serverFault !== null || this.slow) return { until: rows.rows, after: null };
    const before = [...this.waiting.spill, ...this.appending];
    const lastMs = Math.max(this.options.disk.newestMs, ...before.map(({ newestMs }) => newestMs));
    return lastMs === -Infinity ? { until: null, after: rows.rows } : splitRows(rows.rows, lastMs);
  }

  private wake(): void {
    if (this.waiting.spill.length > 0 && this.spilling === null && !this.diskPaused && !this.closed) {
      this.spilling = this.spillAll().finally(() => {
        this.spilling = null;
        this.wake();
      });
    }
    const { disk } = this.options;
    const fromMemory = this.diskFault !== null && this.waiting.spill.length > 0;
    const work = this.waiting.direct.length > 0 || fromMemory || !disk.isEmpty;
    if (!work || this.sending !== null || this.paused || this.closed) return;
    this.sending = this.sendAll().finally(() => {
      this.sending = null;
      this.wake();
    });
  }

  private async spillAll(): Promise<void> {
    try {
      while (this.waiting.spill.length > 0) {
        const writes = this.waiting.spill.slice(0, mostAtOnce);
        this.appending = writes;
        await this.options.disk.append(writes).finally(() => (this.appending = []));
        this.diskFault = null;
        for (const write of writes) this.waiting.settle(write);
      }
    } catch (fault) {
      this.diskFault = `rows can't be put aside on the disk: ${text(fault)}`;
      this.diskPaused = true;
      this.tryLater();
    }
  }

  private async sendAll(): Promise<void> {
    while (!this.paused && !this.closed) {
      const next = await this.next().catch((fault: unknown) => {
        this.diskFault = `rows put aside on the disk can't be read: ${text(fault)}`;
        this.pause();
        return null;
      });
      if (next === null || this.closed) return;
      await this.sendOne(next);
    }
  }

  private async sendOne({ parts, done }: Sending): Promise<void> {
    const timer = setTimeout(() => this.isSlow(), slowAfterMs).unref();
    try {
      this.asking = true;
      const refusal = await this.options.send(parts).finally(() => (this.asking = false));
      this.serverFault = null;
      // Once closed the folder may be another's: what was being sent is sent again.
      if (this.closed || !(await done(refusal)) || refusal === null) return;
      this.rowsRefused += refusal.rows;
      this.lastRefusal = refusal.fault.message;
    } catch (fault) {
      this.serverFault = text(fault);
      this.waiting.divert();
      this.pause();
    } finally {
      clearTimeout(timer);
      this.slow = false;
    }
  }

  /** The newest first, so that screens show them; the disk in between, oldest first. */
  private async next(): Promise<Sending | null> {
    const fromMemory = (write: WaitingWrite): Sending => ({
      parts: [write],
      done: (refusal) => (refusal === null ? this.waiting.settle(write) : this.waiting.refuse(write, refusal)),
    });
    const [direct] = this.waiting.direct;
    if (direct !== undefined) return fromMemory(direct);
    const { disk } = this.options;
    const batch = await disk.first();
    if (batch !== null) return { parts: batch.parts, done: () => disk.done(batch) };
    const [first] = this.waiting.spill;
    return this.diskFault !== null && first !== undefined ? fromMemory(first) : null;
  }

  private isSlow(): void {
    this.slow = true;
    this.waiting.divert();
    this.wake();
  }

  private pause(): void {
    this.paused = true;
    this.tryLater();
    this.wake();
  }

  private tryLater(): void {
    clearTimeout(this.retry);
    this.retry = setTimeout(() => {
      this.diskPaused = false;
      void this.flush();
    }, retryAfterMs).unref();
  }
}

const text = (fault: unknown): string => (fault instanceof Error ? fault.message : String(fault));

import { CodedError } from '@ebbline/shared/errors/coded-error';
import { bytesOfRows } from '../bytes-of-rows';
import type { QueuedRows } from './disk-queue';
import type { Refusal } from './refusal';
import { newestOf, oldestOf } from './split-rows';

export interface WaitingWrite extends QueuedRows {
  readonly bytes: number;
  readonly oldestMs: number;
  readonly newestMs: number;
  readonly kept: Promise<void>;
  resolve(): void;
  reject(fault: CodedError): void;
}

export function waitingWrite({ rows, layout }: QueuedRows): WaitingWrite {
  let resolve = (): void => undefined;
  let reject: WaitingWrite['reject'] = () => undefined;
  const kept = new Promise<void>((yes, no) => {
    resolve = yes;
    reject = no;
  });
  const bytes = bytesOfRows(rows);
  return { rows, layout, bytes, oldestMs: oldestOf(rows), newestMs: newestOf(rows), kept, resolve, reject };
}

/** Rows in memory, on their way to the server or to the disk. Bounded: what does not fit is refused aloud and counted. */
export class WaitingWrites {
  /** Straight to the server: newer than all that waits on the disk. */
  direct: WaitingWrite[] = [];
  /** To the disk. */
  spill: WaitingWrite[] = [];
  rowsLost = 0;

  constructor(private readonly limitBytes: number) {}

  get all(): readonly WaitingWrite[] {
    return [...this.spill, ...this.direct];
  }

  get rows(): number {
    return this.all.reduce((sum, { rows }) => sum + rows.count, 0);
  }

  /** What was to go straight goes to the disk as well, behind what goes there already. */
  divert(): void {
    this.spill.push(...this.direct);
    this.direct = [];
  }

  /** False where it no longer waited here. */
  settle(write: WaitingWrite): boolean {
    const waited = this.take(write);
    if (waited) write.resolve();
    return waited;
  }

  giveUp(write: WaitingWrite, code: string, message: string): void {
    if (!this.take(write)) return;
    this.rowsLost += write.rows.count;
    write.reject(new CodedError(code, `${write.rows.count} rows lost: ${message}`));
  }

  /** As `settle`, where the server took not all of it. */
  refuse(write: WaitingWrite, { rows, fault }: Refusal): boolean {
    if (!this.take(write)) return false;
    write.reject(new CodedError(fault.code, `${rows} rows lost: ${fault.message}`));
    return true;
  }

  /** Never the newest alone: the oldest goes, since its neighbours in time are the least likely still looked at. */
  bound(): void {
    let bytes = this.all.reduce((sum, write) => sum + write.bytes, 0);
    for (const write of this.all.slice(0, -1)) {
      if (bytes <= this.limitBytes) return;
      bytes -= write.bytes;
      const what = 'neither the history store nor the disk takes rows and memory is full; look at the disk';
      this.giveUp(write, 'HISTORY_QUEUE_FULL', what);
    }
  }

  private take(write: WaitingWrite): boolean {
    return [this.direct, this.spill].some((writes) => {
      // Nearly always the first: what is settled is what came first.
      const place = writes.indexOf(write);
      if (place >= 0) writes.splice(place, 1);
      return place >= 0;
    });
  }
}

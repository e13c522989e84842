import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { HistoryRows } from '../../evaluation/pipeline/history-rows';
import { bytesOfRows } from './bytes-of-rows';
import { oldestOf } from './rows-sender';

export interface QueuedWrite {
  readonly rows: HistoryRows;
  /** How often a worker died or refused while it held these rows. */
  tries: number;
  resolve(): void;
  reject(fault: CodedError): void;
}

/** Rows handed over but not yet confirmed, oldest first. Bounded: what does not fit is refused aloud and counted. */
export class WriteQueue {
  readonly #limitBytes: number;
  readonly #writes: QueuedWrite[] = [];
  #bytes = 0;
  #rowsLost = 0;

  constructor(limitBytes: number) {
    this.#limitBytes = limitBytes;
  }

  get rowsQueued(): number {
    return this.#writes.reduce((sum, write) => sum + write.rows.count, 0);
  }

  /** No row is older, ms; Infinity where none waits. */
  get oldestMs(): number {
    return Math.min(Infinity, ...this.#writes.map(({ rows }) => oldestOf(rows)));
  }

  /** Rows given up since the start. */
  get rowsLost(): number {
    return this.#rowsLost;
  }

  get first(): QueuedWrite | undefined {
    return this.#writes[0];
  }

  /** Resolves when the rows are committed; rejects when they are given up. */
  add(rows: HistoryRows): Promise<void> {
    const confirmed = new Promise<void>((resolve, reject) => this.#writes.push({ rows, tries: 0, resolve, reject }));
    this.#bytes += bytesOfRows(rows);
    while (this.#bytes > this.#limitBytes && this.#writes.length > 1) {
      // Never the newest alone: the oldest goes, since its neighbours in time are the least likely still looked at.
      this.#giveUp('HISTORY_QUEUE_FULL', 'the history store takes no rows and the queue is full; look at the disk');
    }
    return confirmed;
  }

  confirmFirst(): void {
    this.#take()?.resolve();
  }

  giveUpFirst(code: string, message: string): void {
    this.#giveUp(code, message);
  }

  #giveUp(code: string, message: string): void {
    const write = this.#take();
    if (write === undefined) return;
    this.#rowsLost += write.rows.count;
    write.reject(new CodedError(code, `${write.rows.count} rows lost: ${message}`));
  }

  #take(): QueuedWrite | undefined {
    const write = this.#writes.shift();
    if (write !== undefined) this.#bytes -= bytesOfRows(write.rows);
    return write;
  }
}

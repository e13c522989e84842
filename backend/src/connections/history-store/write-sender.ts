import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { HistoryRows } from '../../evaluation/pipeline/history-rows';
import type { RowsSender } from './rows-sender';
import { WriteQueue, type QueuedWrite } from './write-queue';

export interface SenderOptions {
  /** Commits one batch; its fault decides what happens to the batch. */
  readonly send: (rows: HistoryRows) => Promise<void>;
  /** Codes of faults after which the same batch may be sent again at once, a few times. */
  readonly againAfter: readonly string[];
  /** Codes of faults that no repetition mends. */
  readonly hopeless: readonly string[];
  readonly queueBytes?: number;
}

/** Most bytes of rows that wait: about a minute at 400,000 samples a second, hours at a usual site. */
const defaultQueueBytes = 256e6;
/** A batch that was being sent when the receiver died so often is taken for the cause of it. */
const mostTries = 3;
/** A batch that was refused is sent again so much later, or with the next call. */
const retryAfterMs = 2000;

/** Hands batches on in order, one in flight, and keeps each until it is confirmed. */
export class WriteSender implements RowsSender {
  readonly #options: SenderOptions;
  readonly #queue: WriteQueue;
  #sending: Promise<void> | null = null;
  #retry: ReturnType<typeof setTimeout> | undefined;
  #fault: string | null = null;
  #closed = false;

  constructor(options: SenderOptions) {
    this.#options = options;
    this.#queue = new WriteQueue(options.queueBytes ?? defaultQueueBytes);
  }

  get rowsQueued(): number {
    return this.#queue.rowsQueued;
  }

  get oldestMs(): number {
    return this.#queue.oldestMs;
  }

  get troubles(): string[] {
    const lost = this.#queue.rowsLost;
    return [
      ...(this.#fault === null ? [] : [this.#fault]),
      ...(lost === 0 ? [] : [`${lost} rows lost since the start`]),
    ];
  }

  get well(): boolean {
    return this.#fault === null;
  }

  write(rows: HistoryRows): Promise<void> {
    if (this.#closed) return Promise.reject(new CodedError('HISTORY_CLOSED', 'the history store is closed'));
    const confirmed = this.#queue.add(rows);
    void this.flush();
    return confirmed;
  }

  /** Sends what waits; resolves when nothing waits or a batch is refused. */
  flush(): Promise<void> {
    // `#sendAll` sets it back in the same turn in which it finds nothing more to send, so no row is overlooked.
    if (this.#sending === null && this.#queue.first !== undefined && !this.#closed) this.#sending = this.#sendAll();
    return this.#sending ?? Promise.resolve();
  }

  /** Tries once more, then gives up what the receiver does not take. */
  async close(): Promise<void> {
    await this.flush();
    this.#closed = true;
    clearTimeout(this.#retry);
    while (this.#queue.first !== undefined) {
      this.#queue.giveUpFirst('HISTORY_CLOSED', 'the store was closed before they were written');
    }
  }

  async #sendAll(): Promise<void> {
    try {
      for (let write = this.#queue.first; write !== undefined && !this.#closed; write = this.#queue.first) {
        if (!(await this.#sendOne(write))) return;
      }
    } finally {
      this.#sending = null;
    }
  }

  async #sendOne(write: QueuedWrite): Promise<boolean> {
    try {
      await this.#options.send(write.rows);
      if (this.#queue.first === write) this.#queue.confirmFirst();
      this.#fault = null;
      return true;
    } catch (fault) {
      this.#fault = fault instanceof Error ? fault.message : String(fault);
      const code = fault instanceof CodedError ? fault.code : 'HISTORY_FAULT';
      const again = this.#options.againAfter.includes(code) && ++write.tries < mostTries;
      const hopeless = this.#options.hopeless.includes(code) || write.tries >= mostTries;
      if (hopeless && this.#queue.first === write) this.#queue.giveUpFirst(code, this.#fault);
      if (hopeless) this.#fault = null;
      if (!again && !hopeless) this.#tryLater();
      return again || hopeless;
    }
  }

  #tryLater(): void {
    clearTimeout(this.#retry);
    this.#retry = setTimeout(() => void this.flush(), retryAfterMs).unref();
  }
}

import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { HistoryRows } from '../../evaluation/pipeline/history-rows';
import type {
  HistoryBuckets,
  HistoryHealth,
  HistoryLayout,
  HistoryQuery,
  HistoryStore,
} from '../../ports/history-store';
import type { EmbeddedHistoryOptions } from './embedded/duckdb-history-store';
import { WorkerLink } from './worker-link';
import { WriteQueue, type QueuedWrite } from './write-queue';

export interface WorkerHistoryOptions {
  /** The built `history-worker.ts`. */
  readonly workerFile: URL;
  readonly store: EmbeddedHistoryOptions;
  /** Most bytes of rows that wait for the disk. */
  readonly queueBytes?: number;
}

const defaultQueueBytes = 256e6;
/** Rows in whose hands so many workers died are taken for the cause of it. */
const mostTries = 3;
/** Rows that the disk refused are tried again so much later, or with the next call. */
const retryAfterMs = 2000;

/**
 * The embedded store in a worker of its own. Rows are kept until they are confirmed: a worker that dies is
 * started again by the next call, with the layout and the unconfirmed rows (writing twice merges to the same).
 */
export class WorkerHistoryStore implements HistoryStore {
  readonly #options: WorkerHistoryOptions;
  readonly #queue: WriteQueue;
  #link: Promise<WorkerLink>;
  #alive: WorkerLink | null = null;
  #layout: HistoryLayout | null = null;
  #sending: Promise<void> | null = null;
  #fault: string | null = null;
  #retry: ReturnType<typeof setTimeout> | undefined;
  #closed = false;

  private constructor(options: WorkerHistoryOptions) {
    this.#options = options;
    this.#queue = new WriteQueue(options.queueBytes ?? defaultQueueBytes);
    this.#link = this.#startLink();
  }

  /** @throws CodedError what opening the store throws */
  static async open(options: WorkerHistoryOptions): Promise<WorkerHistoryStore> {
    const store = new WorkerHistoryStore(options);
    await store.#link;
    return store;
  }

  async useLayout(layout: HistoryLayout): Promise<void> {
    // Rows in the old layout go first.
    await this.#send();
    if (this.#queue.first !== undefined) {
      throw new CodedError(
        'HISTORY_NOT_WRITTEN',
        'rows of the old layout still wait for the disk; try again when health is ok',
      );
    }
    await (await this.#living()).ask({ call: 'useLayout', layout });
    this.#layout = layout;
  }

  write(rows: HistoryRows): Promise<void> {
    const confirmed = this.#queue.add(rows);
    void this.#send();
    return confirmed;
  }

  async read(query: HistoryQuery): Promise<HistoryBuckets> {
    const buckets = await (await this.#living()).ask({ call: 'read', query });
    if (buckets === null) throw new CodedError('HISTORY_FAULT', 'the history worker answered a read without buckets');
    return buckets;
  }

  async maintain(nowMs: number): Promise<void> {
    void this.#send();
    await (await this.#living()).ask({ call: 'maintain', nowMs });
  }

  health(): HistoryHealth {
    const inside = this.#alive?.health ?? null;
    const ended = this.#alive?.ended ?? null;
    const faults = [
      this.#fault,
      ended === null ? null : `the history worker ended (${ended})`,
      inside?.message ?? null,
    ];
    const lost = this.#queue.rowsLost;
    if (lost > 0) faults.push(`${lost} rows lost since the start`);
    const failing = this.#fault !== null || ended !== null || inside?.state === 'failing';
    return {
      state: failing ? 'failing' : 'ok',
      message: [...new Set(faults.filter((fault) => fault !== null))].join('; ') || null,
      rowsQueued: this.#queue.rowsQueued,
      bytesKept: inside?.bytesKept ?? null,
    };
  }

  async close(): Promise<void> {
    await this.#send();
    this.#closed = true;
    clearTimeout(this.#retry);
    const link = this.#alive;
    if (link !== null && link.ended === null) await link.ask({ call: 'close' });
    while (this.#queue.first !== undefined)
      this.#queue.giveUpFirst('HISTORY_CLOSED', 'the store was closed before they were written');
  }

  /** Ends the worker as a crash would. */
  async terminateWorker(): Promise<void> {
    await this.#alive?.terminate();
  }

  /** Sends what waits, one batch in flight; stops at the first that the disk refuses. */
  #send(): Promise<void> {
    // `#sendAll` sets it back in the same turn in which it finds nothing more to send, so no row is overlooked.
    if (this.#sending === null && this.#queue.first !== undefined && !this.#closed) this.#sending = this.#sendAll();
    return this.#sending ?? Promise.resolve();
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
      await (await this.#living()).ask({ call: 'write', rows: write.rows });
      if (this.#queue.first === write) this.#queue.confirmFirst();
      this.#fault = null;
      return true;
    } catch (fault) {
      this.#fault = fault instanceof Error ? fault.message : String(fault);
      const code = fault instanceof CodedError ? fault.code : 'HISTORY_FAULT';
      const died = code === 'HISTORY_WORKER_ENDED';
      if (died) write.tries++;
      const hopeless = code === 'HISTORY_LAYOUT_MISSING' || write.tries >= mostTries;
      if (hopeless && this.#queue.first === write) this.#queue.giveUpFirst(code, this.#fault);
      if (!died && !hopeless) this.#tryLater();
      return died || hopeless;
    }
  }

  #tryLater(): void {
    clearTimeout(this.#retry);
    this.#retry = setTimeout(() => void this.#send(), retryAfterMs).unref();
  }

  async #living(): Promise<WorkerLink> {
    if (this.#closed) throw new CodedError('HISTORY_CLOSED', 'the history store is closed');
    const current = this.#link;
    const link = await current.catch(() => null);
    if (link !== null && link.ended === null) return link;
    if (this.#link === current) this.#link = this.#startLink();
    return this.#link;
  }

  async #startLink(): Promise<WorkerLink> {
    this.#alive = null;
    const link = await WorkerLink.start(this.#options.workerFile, this.#options.store);
    if (this.#layout !== null) await link.ask({ call: 'useLayout', layout: this.#layout });
    this.#alive = link;
    return link;
  }
}

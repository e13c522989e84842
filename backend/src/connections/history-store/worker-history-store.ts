import { CodedError } from '@ebbline/shared/errors/coded-error';
import { unreachable } from '@ebbline/shared/errors/unreachable';
import type { HistoryRows } from '../../evaluation/pipeline/history-rows';
import type {
  HistoryAge,
  HistoryBuckets,
  HistoryHealth,
  HistoryLayout,
  HistoryMinute,
  HistoryQuery,
  HistorySeconds,
  HistoryStore,
  MinuteQuery,
  SecondsQuery,
  TogetherQuery,
} from '../../ports/history-store';
import { PromptSender } from './prompt-sender';
import type { RowsSender } from './rows-sender';
import { WorkerLink } from './worker-link';
import type { WorkerState, WorkerStore } from './worker-messages';
import { WriteSender } from './write-sender';

export interface WorkerHistoryOptions {
  /** The built `history-worker.ts`. */
  readonly workerFile: URL;
  readonly store: WorkerStore;
  /** Most bytes of rows that wait for the disk, of an embedded store: InfluxDB's bounds them itself. */
  readonly queueBytes?: number;
}

/**
 * A store in a worker of its own, so that the rest waits neither for a disk nor for a server. Rows are kept until they are confirmed: a worker that dies is
 * started again by the next call, with the layout and the unconfirmed rows (writing twice merges to the same).
 */
export class WorkerHistoryStore implements HistoryStore {
  readonly #options: WorkerHistoryOptions;
  readonly #sender: RowsSender;
  #link: Promise<WorkerLink>;
  #alive: WorkerLink | null = null;
  /** As the worker last told, this one or the one before. */
  #told: WorkerState | null = null;
  #layout: HistoryLayout | null = null;
  #closed = false;

  private constructor(options: WorkerHistoryOptions) {
    this.#options = options;
    const send = async (rows: HistoryRows): Promise<void> => {
      await (await this.#living()).ask({ call: 'write', rows });
    };
    this.#sender = senderOf(options, send);
    this.#link = this.#startLink();
  }

  /** @throws CodedError what opening the store throws */
  static async open(options: WorkerHistoryOptions): Promise<WorkerHistoryStore> {
    const store = new WorkerHistoryStore(options);
    await store.#link;
    return store;
  }

  /** Rows in the old layout go first. */
  async useLayout(layout: HistoryLayout): Promise<void> {
    await this.#sender.flush();
    if (this.#sender.rowsQueued > 0) {
      const what = 'rows of the old layout still wait for the disk; try again when health is ok';
      throw new CodedError('HISTORY_NOT_WRITTEN', what);
    }
    await (await this.#living()).ask({ call: 'useLayout', layout });
    this.#layout = layout;
  }

  write(rows: HistoryRows): Promise<void> {
    return this.#sender.write(rows);
  }

  async read(query: HistoryQuery): Promise<HistoryBuckets> {
    const buckets = await (await this.#living()).ask({ call: 'read', query });
    if (buckets === null || !('bucketMs' in buckets))
      throw new CodedError('HISTORY_FAULT', 'the history worker answered a read without buckets');
    return buckets;
  }

  async readSeconds(query: SecondsQuery): Promise<HistorySeconds> {
    const seconds = await (await this.#living()).ask({ call: 'readSeconds', query });
    if (seconds === null || !('quality' in seconds))
      throw new CodedError('HISTORY_FAULT', 'the history worker answered a read without seconds');
    return seconds;
  }

  async readTogether(query: TogetherQuery): Promise<readonly HistorySeconds[]> {
    const answer = await (await this.#living()).ask({ call: 'readTogether', query });
    if (answer === null || !('together' in answer))
      throw new CodedError('HISTORY_FAULT', 'the history worker answered a read of several without their seconds');
    return answer.together;
  }

  async readMinute(query: MinuteQuery): Promise<readonly HistoryMinute[]> {
    const answer = await (await this.#living()).ask({ call: 'readMinute', query });
    if (answer === null || !('minutes' in answer))
      throw new CodedError('HISTORY_FAULT', 'the history worker answered a read of a minute without it');
    return answer.minutes;
  }

  async maintain(nowMs: number, age?: HistoryAge): Promise<void> {
    void this.#sender.flush();
    await (await this.#living()).ask({ call: 'maintain', nowMs, age });
  }

  health(): HistoryHealth {
    const { alive, ended } = this.#now();
    const inside = alive?.health ?? null;
    const troubles = [...this.#sender.troubles];
    if (ended !== null) troubles.push(`the history worker ended (${ended})`);
    if (inside !== null && inside.message !== null) troubles.push(inside.message);
    const well = this.#sender.well && ended === null && inside !== null && inside.state === 'ok';
    return {
      ...inside,
      state: well ? 'ok' : 'failing',
      message: [...new Set(troubles)].join('; ') || null,
      // What is on its way here may be counted there as well.
      rowsQueued: Math.max(this.#sender.rowsQueued, inside?.rowsQueued ?? 0),
      bytesKept: inside?.bytesKept ?? null,
      damaged: inside?.damaged ?? null,
    };
  }

  waitingFromMs(): number {
    // Of an embedded store everything that can be read is there: what waits in memory comes within seconds.
    if (this.#options.store.kind === 'embedded') return Infinity;
    return Math.min(this.#sender.oldestMs, (this.#now().alive ?? this.#told)?.waitingFromMs ?? -Infinity);
  }

  async close(): Promise<void> {
    if (this.#closed) return;
    await this.#sender.close();
    this.#closed = true;
    const link = this.#alive;
    if (link !== null && link.ended === null) await link.ask({ call: 'close' });
  }

  /** Ends the worker as a crash would. */
  async terminateWorker(): Promise<void> {
    await this.#alive?.terminate();
  }

  #now(): { readonly alive: WorkerState | null; readonly ended: string | null } {
    const alive = this.#alive?.state ?? null;
    this.#told = alive ?? this.#told;
    return { alive, ended: this.#alive?.ended ?? null };
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

function senderOf({ store, queueBytes }: WorkerHistoryOptions, send: (rows: HistoryRows) => Promise<void>): RowsSender {
  const diedCode = 'HISTORY_WORKER_ENDED';
  switch (store.kind) {
    case 'embedded':
      return new WriteSender({
        ...{ send, againAfter: [diedCode], hopeless: ['HISTORY_LAYOUT_MISSING'] },
        ...(queueBytes === undefined ? {} : { queueBytes }),
      });
    case 'influx':
      return new PromptSender({ send, diedCode });
    default:
      return unreachable(store);
  }
}

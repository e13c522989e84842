import type { IPoint } from 'influx';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { HistoryRows } from '../../../evaluation/pipeline/history-rows';
import type {
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
} from '../../../ports/history-store';
import { BucketSums } from '../bucket-sums';
import { bucketPlan, dayMs, hourMs, secondsPlan } from '../history-query';
import { DiskQueue, type QueuedRows } from '../queue/disk-queue';
import { queuedLayout, type QueuedLayout } from '../queue/queued-layout';
import { QueuedSender } from '../queue/queued-sender';
import type { Refusal } from '../queue/refusal';
import { influxAddress } from './influx-address';
import { InfluxServer, type InfluxRows } from './influx-server';
import { PreparedDatabase } from './prepared-database';
import { readMinute } from './read-minute';
import { readSeconds } from './read-seconds';
import { readStatements } from './read-statements';
import { fieldOf, secondsPolicy, toPoints, type LayoutHolder } from './to-points';

/** How often an answer with half-written rows is asked for; then those rows are left out, as if not written yet. */
const readAttempts = 5;

const isWhole = (row: InfluxRows[number]): boolean => row.every((figure) => figure !== null);

export interface InfluxHistoryOptions {
  readonly url: string;
  readonly rawDays?: number;
  readonly minuteDays?: number;
  /** Where rows wait while the server is away. */
  readonly queueFolder: string;
  /** Most bytes of them on the disk; 10 GiB hold an hour of 5,000 units of 80 points. */
  readonly queueBytes?: number;
  /** Wall time of the opening, from which on it is known what the server no longer keeps; else from the first upkeep on. */
  readonly nowMs?: number;
}

const defaultQueueBytes = 10 * 2 ** 30;

/**
 * History in InfluxDB 1.x. A server that is not there, at the start or later, is tried again: rows wait on the disk, bounded
 * and counted, over a restart too, and health says so. Retention is by days alone, as its retention policies offer; it counts them on the
 * server's own clock, and leaves out what comes in older than that.
 */
export class InfluxHistoryStore implements HistoryStore {
  readonly #server: InfluxServer;
  readonly #rawDays: number;
  readonly #database: PreparedDatabase;
  readonly #sender: QueuedSender;
  readonly #disk: DiskQueue;
  readonly #queueBytes: number;
  /** Rows that wait keep the layout in which they were handed over. */
  readonly #holdersOf = new Map<string, readonly LayoutHolder[]>();
  #layout: QueuedLayout = queuedLayout({ holders: [] });
  #retiredBeforeMs = -Infinity;
  #pointsTooOld = 0;

  private constructor(server: InfluxServer, disk: DiskQueue, options: InfluxHistoryOptions) {
    const { rawDays = 7, minuteDays = 730, queueBytes = defaultQueueBytes } = options;
    this.#server = server;
    this.#disk = disk;
    this.#rawDays = rawDays;
    this.#queueBytes = queueBytes;
    this.#database = new PreparedDatabase(server, { raw: rawDays, minutes: minuteDays });
    if (options.nowMs !== undefined) this.#retiredBeforeMs = this.#retiredAt(options.nowMs);
    this.#sender = new QueuedSender({ disk, send: (parts) => this.#commit(parts) });
  }

  /**
   * A server that cannot be reached or refuses is no fault of the opening.
   * @throws CodedError HISTORY_URL_INVALID, HISTORY_QUEUE_UNREADABLE
   */
  static async open(options: InfluxHistoryOptions): Promise<InfluxHistoryStore> {
    const { url, queueFolder: folder, queueBytes: limitBytes = defaultQueueBytes } = options;
    const server = new InfluxServer(influxAddress(url));
    const store = new InfluxHistoryStore(server, await DiskQueue.open({ folder, limitBytes }), options);
    await store.#database.ready().catch(() => undefined);
    return store;
  }

  useLayout(layout: HistoryLayout): Promise<void> {
    this.#layout = queuedLayout(layout);
    return Promise.resolve();
  }

  async write(rows: HistoryRows): Promise<void> {
    const { widths } = this.#layout;
    const unnamed = rows.holder.subarray(0, rows.count).find((holder) => widths[holder] === undefined);
    if (unnamed !== undefined)
      throw new CodedError('HISTORY_LAYOUT_MISSING', `no layout names holder ${unnamed}; call useLayout first`);
    await this.#sender.write({ rows, layout: this.#layout });
  }

  async read(query: HistoryQuery): Promise<HistoryBuckets> {
    const plan = bucketPlan(query);
    const sums = new BucketSums(plan);
    const due = await this.#database.ready();
    const { statements, usesMinutes } = readStatements(
      plan,
      query.holder,
      fieldOf(query),
      due.hours,
      this.#retiredBeforeMs,
    );
    if (usesMinutes) sums.usedMinutes();
    for (const rows of await this.#wholeRows(statements)) {
      for (const row of rows) {
        const [start = NaN, min = NaN, sum = NaN, max = NaN, count = NaN] = row.map(Number);
        sums.add(Math.floor((start - plan.fromMs) / plan.bucketMs), min, sum, max, count);
      }
    }
    return sums.buckets();
  }

  async readSeconds(query: SecondsQuery): Promise<HistorySeconds> {
    const { fromMs, toMs } = query;
    const [seconds] = await this.readTogether({ holders: [query], fromMs, toMs });
    if (seconds === undefined) throw new CodedError('HISTORY_FAULT', 'a read of one holder gave back none');
    return seconds;
  }

  async readTogether({ holders, fromMs, toMs }: TogetherQuery): Promise<readonly HistorySeconds[]> {
    const plans = holders.map((one) => secondsPlan({ ...one, fromMs, toMs }));
    await this.#database.ready();
    return readSeconds(this.#server, plans, this.#retiredBeforeMs);
  }

  async readMinute(query: MinuteQuery): Promise<readonly HistoryMinute[]> {
    await this.#database.ready();
    return readMinute(this.#server, query);
  }

  /**
   * InfluxDB takes the figures of one row at slightly different instants: where a write comes in between, a count may
   * stand there before its sum. Such an answer is asked again; no sum is ever made up.
   */
  async #wholeRows(statements: readonly string[]): Promise<readonly InfluxRows[]> {
    for (let attempt = 1; ; attempt++) {
      const answer = await this.#server.query(statements);
      if (answer.every((rows) => rows.every(isWhole))) return answer;
      if (attempt === readAttempts) return answer.map((rows) => rows.filter(isWhole));
    }
  }

  async maintain(nowMs: number): Promise<void> {
    void this.#sender.flush();
    // Before what may take long or fail: what is older is read by minute from now on, as its seconds are gone.
    this.#retiredBeforeMs = this.#retiredAt(nowMs);
    const due = await this.#database.ready();
    await due.settle(nowMs);
  }

  #retiredAt(nowMs: number): number {
    return Math.ceil((nowMs - this.#rawDays * dayMs) / hourMs) * hourMs;
  }

  health(): HistoryHealth {
    const { trouble, losses } = this.#sender;
    const troubles = [this.#database.fault, trouble].filter((fault) => fault !== null);
    const tooOld = this.#pointsTooOld > 0 ? [`${this.#pointsTooOld} rows older than InfluxDB keeps were left out`] : [];
    return {
      state: troubles.length === 0 ? 'ok' : 'failing',
      message: [...new Set([...troubles, ...losses, ...tooOld])].join('; ') || null,
      rowsQueued: this.#sender.rowsQueued,
      bytesKept: null,
      putAside: this.#disk.isEmpty
        ? null
        : {
            rows: this.#disk.rows,
            bytes: this.#disk.bytes,
            limitBytes: this.#queueBytes,
            sinceMs: this.#disk.oldestMs,
          },
      losses,
    };
  }

  waitingFromMs(): number {
    return this.#sender.oldestMs;
  }

  close(): Promise<void> {
    return this.#sender.close();
  }

  async #commit(parts: readonly QueuedRows[]): Promise<Refusal | null> {
    const due = await this.#database.ready();
    const hours = new Set<number>();
    for (const { rows } of parts)
      for (let row = 0; row < rows.count; row++) hours.add(Math.floor((rows.secondMs[row] ?? NaN) / hourMs) * hourMs);
    try {
      const write = () => this.#server.write(this.#points(parts), secondsPolicy);
      const { leftOut, refused } = await due.whileWriting(hours, write);
      this.#pointsTooOld += leftOut;
      return refused;
    } catch (fault) {
      return this.#database.lost(fault);
    }
  }

  /** As they are asked for, so that other work comes in between. */
  *#points(parts: readonly QueuedRows[]): Generator<IPoint> {
    for (const { rows, layout } of parts) {
      const holders = this.#holders(layout);
      for (let row = 0; row < rows.count; row++) {
        const holder = holders[rows.holder[row] ?? -1];
        if (holder !== undefined) yield* toPoints(rows, row, holder);
      }
    }
  }

  /** What was doubted of a layout's values is remembered as long as the program runs. */
  #holders(layout: QueuedLayout): readonly LayoutHolder[] {
    const known = this.#holdersOf.get(layout.id);
    if (known !== undefined) return known;
    const holders = layout.layout.holders.map(({ id, columns }) => ({
      id,
      fields: columns.map(fieldOf),
      doubted: new Uint8Array(columns.length),
    }));
    this.#holdersOf.set(layout.id, holders);
    return holders;
  }
}

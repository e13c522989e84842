import type { IPoint } from 'influx';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { HistoryRows } from '../../../evaluation/pipeline/history-rows';
import type {
  HistoryBuckets,
  HistoryHealth,
  HistoryLayout,
  HistoryQuery,
  HistoryStore,
} from '../../../ports/history-store';
import { BucketSums } from '../bucket-sums';
import { bucketPlan, dayMs, hourMs } from '../history-query';
import { WriteSender } from '../write-sender';
import { influxAddress } from './influx-address';
import { InfluxServer, type InfluxRows } from './influx-server';
import { PreparedDatabase } from './prepared-database';
import { readStatements } from './read-statements';
import { fieldOf, secondsPolicy, toPoints, type LayoutHolder } from './to-points';

/** How often an answer with half-written rows is asked for; then those rows are left out, as if not written yet. */
const readAttempts = 5;

const isWhole = (row: InfluxRows[number]): boolean => row.every((figure) => figure !== null);

export interface InfluxHistoryOptions {
  readonly url: string;
  readonly rawDays?: number;
  readonly minuteDays?: number;
  /** Most bytes of rows that wait for the server. */
  readonly queueBytes?: number;
}

/**
 * History in InfluxDB 1.x. A server that is not there, at the start or later, is tried again: rows wait, bounded and
 * counted, and health says so. Retention is by days alone, as its retention policies offer; it counts them on the
 * server's own clock, and leaves out what comes in older than that.
 */
export class InfluxHistoryStore implements HistoryStore {
  readonly #server: InfluxServer;
  readonly #rawDays: number;
  readonly #database: PreparedDatabase;
  readonly #sender: WriteSender;
  /** Rows that wait keep the layout in which they were handed over. */
  readonly #holdersOf = new WeakMap<HistoryRows, readonly LayoutHolder[]>();
  #holders: readonly LayoutHolder[] = [];
  #retiredBeforeMs = -Infinity;
  #pointsTooOld = 0;
  #maintainFault: string | null = null;

  private constructor(server: InfluxServer, rawDays: number, minuteDays: number, queueBytes?: number) {
    this.#server = server;
    this.#rawDays = rawDays;
    this.#database = new PreparedDatabase(server, { raw: rawDays, minutes: minuteDays });
    this.#sender = new WriteSender({
      send: (rows) => this.#commit(rows),
      againAfter: [],
      hopeless: ['HISTORY_LAYOUT_MISSING'],
      ...(queueBytes === undefined ? {} : { queueBytes }),
    });
  }

  /** A server that cannot be reached or refuses is no fault of the opening. @throws CodedError HISTORY_URL_INVALID */
  static async open(options: InfluxHistoryOptions): Promise<InfluxHistoryStore> {
    const { url, rawDays = 7, minuteDays = 730, queueBytes } = options;
    const store = new InfluxHistoryStore(new InfluxServer(influxAddress(url)), rawDays, minuteDays, queueBytes);
    await store.#database.ready().catch(() => undefined);
    return store;
  }

  useLayout(layout: HistoryLayout): Promise<void> {
    this.#holders = layout.holders.map(({ id, columns }) => ({
      id,
      fields: columns.map(fieldOf),
      doubted: new Uint8Array(columns.length),
    }));
    return Promise.resolve();
  }

  write(rows: HistoryRows): Promise<void> {
    this.#holdersOf.set(rows, this.#holders);
    return this.#sender.write(rows);
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
    const due = await this.#database.ready();
    try {
      await due.settle(nowMs);
      this.#retiredBeforeMs = Math.ceil((nowMs - this.#rawDays * dayMs) / hourMs) * hourMs;
      this.#maintainFault = null;
    } catch (fault) {
      this.#maintainFault = fault instanceof Error ? fault.message : String(fault);
      throw fault;
    }
  }

  health(): HistoryHealth {
    const troubles = [...this.#sender.troubles];
    if (this.#database.fault !== null) troubles.unshift(this.#database.fault);
    if (this.#maintainFault !== null) troubles.push(this.#maintainFault);
    if (this.#pointsTooOld > 0) troubles.push(`${this.#pointsTooOld} rows older than InfluxDB keeps were left out`);
    return {
      state: this.#sender.well && this.#database.fault === null && this.#maintainFault === null ? 'ok' : 'failing',
      message: [...new Set(troubles)].join('; ') || null,
      rowsQueued: this.#sender.rowsQueued,
      bytesKept: null,
    };
  }

  close(): Promise<void> {
    return this.#sender.close();
  }

  async #commit(rows: HistoryRows): Promise<void> {
    const due = await this.#database.ready();
    const holders = this.#holdersOf.get(rows) ?? [];
    const points: IPoint[] = [];
    const hours = new Set<number>();
    for (let row = 0; row < rows.count; row++) {
      const holder = holders[rows.holder[row] ?? -1];
      if (holder === undefined) {
        const what = `no layout names holder ${rows.holder[row]}; call useLayout first`;
        throw new CodedError('HISTORY_LAYOUT_MISSING', what);
      }
      points.push(...toPoints(rows, row, holder));
      hours.add(Math.floor((rows.secondMs[row] ?? NaN) / hourMs) * hourMs);
    }
    // First what is due: should the program end in between, minutes are made once too often, never once too seldom.
    await due.add(hours);
    this.#pointsTooOld += await this.#server.write(points, secondsPolicy);
  }
}

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
import { InfluxServer } from './influx-server';
import { MinutesDue } from './minutes-due';
import { readStatements } from './read-statements';
import { fieldOf, minutesPolicy, secondsPolicy, toPoints, type LayoutHolder } from './to-points';

export interface InfluxHistoryOptions {
  readonly url: string;
  readonly rawDays?: number;
  readonly minuteDays?: number;
}

/**
 * History in InfluxDB 1.x. Retention is by days alone, as its retention policies offer; it counts them on the
 * server's own clock, and leaves out what comes in older than that.
 */
export class InfluxHistoryStore implements HistoryStore {
  readonly #server: InfluxServer;
  readonly #due: MinutesDue;
  readonly #rawDays: number;
  readonly #sender: WriteSender;
  #holders: readonly LayoutHolder[] = [];
  #retiredBeforeMs = -Infinity;
  #pointsTooOld = 0;
  #maintainFault: string | null = null;

  private constructor(server: InfluxServer, due: MinutesDue, rawDays: number) {
    this.#server = server;
    this.#due = due;
    this.#rawDays = rawDays;
    this.#sender = new WriteSender({
      send: (rows) => this.#commit(rows),
      againAfter: [],
      hopeless: ['HISTORY_LAYOUT_MISSING'],
    });
  }

  /** Creates database and retention policies where they are absent. @throws CodedError HISTORY_URL_INVALID, HISTORY_OPEN_FAILED */
  static async open({ url, rawDays = 7, minuteDays = 730 }: InfluxHistoryOptions): Promise<InfluxHistoryStore> {
    const server = new InfluxServer(influxAddress(url));
    await server.createDatabase();
    await server.ensureRetentionPolicy(secondsPolicy, rawDays, true);
    await server.ensureRetentionPolicy(minutesPolicy, minuteDays, false);
    return new InfluxHistoryStore(server, await MinutesDue.load(server), rawDays);
  }

  async useLayout(layout: HistoryLayout): Promise<void> {
    await this.#sender.flush();
    this.#holders = layout.holders.map(({ id, columns }) => ({
      id,
      fields: columns.map(fieldOf),
      doubted: new Uint8Array(columns.length),
    }));
  }

  write(rows: HistoryRows): Promise<void> {
    return this.#sender.write(rows);
  }

  async read(query: HistoryQuery): Promise<HistoryBuckets> {
    const plan = bucketPlan(query);
    const sums = new BucketSums(plan);
    const { statements, usesMinutes } = readStatements(
      plan,
      query.holder,
      fieldOf(query),
      this.#due.hours,
      this.#retiredBeforeMs,
    );
    if (usesMinutes) sums.usedMinutes();
    for (const rows of await this.#server.query(statements)) {
      for (const row of rows) {
        const [start = NaN, min = NaN, sum = NaN, max = NaN, count = NaN] = row.map(Number);
        sums.add(Math.floor((start - plan.fromMs) / plan.bucketMs), min, sum, max, count);
      }
    }
    return sums.buckets();
  }

  async maintain(nowMs: number): Promise<void> {
    void this.#sender.flush();
    try {
      await this.#due.settle(nowMs);
      this.#retiredBeforeMs = Math.ceil((nowMs - this.#rawDays * dayMs) / hourMs) * hourMs;
      this.#maintainFault = null;
    } catch (fault) {
      this.#maintainFault = fault instanceof Error ? fault.message : String(fault);
      throw fault;
    }
  }

  health(): HistoryHealth {
    const troubles = [...this.#sender.troubles];
    if (this.#maintainFault !== null) troubles.push(this.#maintainFault);
    if (this.#pointsTooOld > 0) troubles.push(`${this.#pointsTooOld} rows older than InfluxDB keeps were left out`);
    return {
      state: this.#sender.well && this.#maintainFault === null ? 'ok' : 'failing',
      message: [...new Set(troubles)].join('; ') || null,
      rowsQueued: this.#sender.rowsQueued,
      bytesKept: null,
    };
  }

  close(): Promise<void> {
    return this.#sender.close();
  }

  async #commit(rows: HistoryRows): Promise<void> {
    const points: IPoint[] = [];
    const hours = new Set<number>();
    for (let row = 0; row < rows.count; row++) {
      const holder = this.#holders[rows.holder[row] ?? -1];
      if (holder === undefined) {
        const what = `no layout names holder ${rows.holder[row]}; call useLayout first`;
        throw new CodedError('HISTORY_LAYOUT_MISSING', what);
      }
      points.push(...toPoints(rows, row, holder));
      hours.add(Math.floor((rows.secondMs[row] ?? NaN) / hourMs) * hourMs);
    }
    // First what is due: should the program end in between, minutes are made once too often, never once too seldom.
    await this.#due.add(hours);
    this.#pointsTooOld += await this.#server.write(points, secondsPolicy);
  }
}

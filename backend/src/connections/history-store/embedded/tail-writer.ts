import type { DuckDBConnection } from '@duckdb/node-api';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { HistoryRows } from '../../../evaluation/pipeline/history-rows';
import { failpoint } from '../../../ports/failpoint';
import type { HistoryLayout } from '../../../ports/history-store';
import { hourMs } from '../history-query';
import { appendRows } from './append-rows';
import type { Catalogue, HolderPlaces } from './catalogue';
import { SerialQueue } from './serial-queue';
import { createTailTable, loadTailTables, nextTailTable, type TailTable } from './tail-tables';

const mostTablesInLog = 16;

/** Writes rows to the tails of their hours, one transaction a call, in the order of the calls. */
export class TailWriter {
  readonly #connection: DuckDBConnection;
  readonly #catalogue: Catalogue;
  readonly #queue = new SerialQueue();
  #tails: readonly TailTable[];
  #places: readonly HolderPlaces[] = [];
  #rowsQueued = 0;
  #rowsTooOld = 0;
  /** Tables made since the log was last folded into the file. */
  #inLog = 0;

  private constructor(connection: DuckDBConnection, catalogue: Catalogue, tails: readonly TailTable[]) {
    this.#connection = connection;
    this.#catalogue = catalogue;
    this.#tails = tails;
  }

  static async open(connection: DuckDBConnection, catalogue: Catalogue): Promise<TailWriter> {
    return new TailWriter(connection, catalogue, await loadTailTables(connection));
  }

  /** Committed tails. */
  get tails(): readonly TailTable[] {
    return this.#tails;
  }

  get rowsQueued(): number {
    return this.#rowsQueued;
  }

  /** Rows left out because retention had already deleted the seconds of their hour. */
  get rowsTooOld(): number {
    return this.#rowsTooOld;
  }

  useLayout(layout: HistoryLayout): Promise<void> {
    return this.#queue.run(async () => {
      this.#places = await this.#catalogue.place(layout);
      const width = this.#catalogue.width;
      this.#tails = this.#tails.map((table) => (table.width < width ? { ...table, open: false } : table));
    });
  }

  /** @param retiredBefore asked when the rows' turn comes, since retention may run while they wait */
  async write(rows: HistoryRows, retiredBefore: () => number): Promise<void> {
    this.#rowsQueued += rows.count;
    try {
      await this.#queue.run(() => this.#commit(rows, retiredBefore()));
    } finally {
      this.#rowsQueued -= rows.count;
    }
  }

  /** Closes the tails of an hour, so that later rows go to a new one, and returns them. */
  closeHour(hour: number): Promise<readonly TailTable[]> {
    return this.#queue.run(() => {
      this.#tails = this.#tails.map((table) => (table.hourMs === hour ? { ...table, open: false } : table));
      return Promise.resolve(this.#tails.filter((table) => table.hourMs === hour));
    });
  }

  /** After their tables were dropped. */
  forget(dropped: readonly TailTable[]): void {
    const names = new Set(dropped.map((table) => table.name));
    this.#tails = this.#tails.filter((table) => !names.has(table.name));
  }

  /** Runs a job between two commits, on the writer's connection. */
  between<Value>(job: (connection: DuckDBConnection) => Promise<Value>): Promise<Value> {
    return this.#queue.run(() => job(this.#connection));
  }

  async #commit(rows: HistoryRows, retiredBeforeMs: number): Promise<void> {
    const byHour = this.#byHour(rows, retiredBeforeMs);
    if (byHour.size === 0) return;
    const created: TailTable[] = [];
    await this.#connection.run('BEGIN');
    try {
      for (const [hour, indices] of byHour) {
        const ofHour = this.#tails.filter((table) => table.hourMs === hour);
        let table = ofHour.find((candidate) => candidate.open);
        if (table === undefined) {
          table = nextTailTable(hour, this.#catalogue.width, ofHour);
          await createTailTable(this.#connection, table);
          created.push(table);
        }
        await appendRows(this.#connection, table, rows, indices, this.#places);
      }
      failpoint('tail-before-commit');
      await this.#connection.run('COMMIT');
      failpoint('tail-after-commit');
    } catch (cause) {
      await this.#connection.run('ROLLBACK').catch(() => undefined);
      const what = `${rows.count} rows could not be committed to history; check disk space and permissions of the data folder`;
      throw new CodedError('HISTORY_WRITE_FAILED', what, { cause });
    }
    this.#tails = [...this.#tails, ...created];
    await this.#foldLog(created.length);
  }

  /**
   * What stands in the log alone is held in memory, and each table takes some MB there however few its rows: hundreds of hours told late
   * left no memory for a commit, nor for the next start. Not now where a read is under way; then with a later table.
   */
  async #foldLog(created: number): Promise<void> {
    this.#inLog += created;
    if (this.#inLog < mostTablesInLog) return;
    await this.#connection.run('CHECKPOINT').then(
      () => (this.#inLog = 0),
      () => undefined,
    );
  }

  #byHour(rows: HistoryRows, retiredBeforeMs: number): Map<number, number[]> {
    const byHour = new Map<number, number[]>();
    for (let row = 0; row < rows.count; row++) {
      if (this.#places[rows.holder[row] ?? -1] === undefined) {
        throw new CodedError(
          'HISTORY_LAYOUT_MISSING',
          `no layout names holder ${rows.holder[row]}; call useLayout first`,
        );
      }
      const second = rows.secondMs[row] ?? NaN;
      if (second < retiredBeforeMs) {
        this.#rowsTooOld++;
        continue;
      }
      const hour = Math.floor(second / hourMs) * hourMs;
      const indices = byHour.get(hour);
      if (indices === undefined) byHour.set(hour, [row]);
      else indices.push(row);
    }
    return byHour;
  }
}

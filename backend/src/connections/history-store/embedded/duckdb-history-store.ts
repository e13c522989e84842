import { mkdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { DuckDBConnection, DuckDBInstance } from '@duckdb/node-api';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { HistoryRows } from '../../../evaluation/pipeline/history-rows';
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
} from '../../../ports/history-store';
import { BucketSums } from '../bucket-sums';
import { bucketPlan, secondsPlan } from '../history-query';
import { Catalogue } from './catalogue';
import { DamagedFiles } from './damaged-files';
import { databaseFile } from './kept-names';
import { Maintenance } from './maintenance';
import { Manifest } from './manifest';
import { openDuckDb, type DuckDbLimits } from './open-duckdb';
import { canBeRead, damagedFault, readFault } from './read-fault';
import { ReadGate } from './read-gate';
import { readMinute } from './read-minute';
import { readSeconds } from './read-seconds';
import { readSql, type ReadSources } from './read-sql';
import { defaultRetention, type Retention } from './retention';
import { SerialQueue } from './serial-queue';
import { TailWriter } from './tail-writer';
import { defaultValuesAtOnce } from './write-sealed';

export interface EmbeddedHistoryOptions {
  /** The store's own folder below the data folder. */
  readonly folder: string;
  readonly retention?: Retention;
  readonly limits?: DuckDbLimits;
  /** Most values that sealing puts in unit order at once, in memory. */
  readonly valuesAtOnce?: number;
}

/** Compared with their sums at a time: some 0.1 s of a worker's CPU. */
const comparedBytes = 32e6;

const defaultLimits: DuckDbLimits = { threads: 2, memoryMb: 1024 };

/** History in one folder: a DuckDB file with the newest hours, and sealed Parquet files beside it. */
export class DuckDbHistoryStore implements HistoryStore {
  readonly #folder: string;
  readonly #instance: DuckDBInstance;
  readonly #connections: readonly DuckDBConnection[];
  readonly #catalogue: Catalogue;
  readonly #manifest: Manifest;
  readonly #writer: TailWriter;
  readonly #gate: ReadGate;
  readonly #maintenance: Maintenance;
  readonly #damaged: DamagedFiles;
  readonly #maintenanceQueue = new SerialQueue();
  #databaseBytes = 0;
  #writeFault: string | null = null;

  private constructor(parts: {
    readonly folder: string;
    readonly instance: DuckDBInstance;
    readonly connections: readonly DuckDBConnection[];
    readonly catalogue: Catalogue;
    readonly manifest: Manifest;
    readonly writer: TailWriter;
    readonly gate: ReadGate;
    readonly maintenance: Maintenance;
  }) {
    this.#folder = parts.folder;
    this.#damaged = new DamagedFiles(parts.folder);
    this.#instance = parts.instance;
    this.#connections = parts.connections;
    this.#catalogue = parts.catalogue;
    this.#manifest = parts.manifest;
    this.#writer = parts.writer;
    this.#gate = parts.gate;
    this.#maintenance = parts.maintenance;
  }

  /** @throws CodedError HISTORY_OPEN_FAILED */
  static async open(options: EmbeddedHistoryOptions): Promise<DuckDbHistoryStore> {
    const {
      folder,
      retention = defaultRetention,
      limits = defaultLimits,
      valuesAtOnce = defaultValuesAtOnce,
    } = options;
    await mkdir(folder, { recursive: true });
    const instance = await openDuckDb(join(folder, databaseFile), join(folder, 'spill'), limits);
    const write = await instance.connect();
    const maintain = await instance.connect();
    const catalogue = await Catalogue.open(write);
    const manifest = await Manifest.open(maintain);
    const writer = await TailWriter.open(write, catalogue);
    const gate = new ReadGate();
    const maintenance = new Maintenance({
      connection: maintain,
      folder,
      manifest,
      writer,
      gate,
      retention,
      valuesAtOnce,
    });
    await maintenance.recover();
    const connections = [write, maintain];
    const store = new DuckDbHistoryStore({
      folder,
      instance,
      connections,
      catalogue,
      manifest,
      writer,
      gate,
      maintenance,
    });
    await store.#measure();
    await store.#lookForDamage();
    return store;
  }

  useLayout(layout: HistoryLayout): Promise<void> {
    return this.#writer.useLayout(layout);
  }

  /** Its fault is remembered for health until a write succeeds again. */
  async write(rows: HistoryRows): Promise<void> {
    try {
      await this.#writer.write(rows, () => this.#manifest.retiredBeforeMs);
      this.#writeFault = null;
    } catch (fault) {
      this.#writeFault = fault instanceof Error ? fault.message : String(fault);
      throw fault;
    }
  }

  async read(query: HistoryQuery): Promise<HistoryBuckets> {
    const plan = bucketPlan(query);
    return this.#gate.read(async () => {
      const sums = new BucketSums(plan);
      const found = this.#catalogue.find(query.holder, query.point, query.unitOfMeasure);
      if (found === null) return sums.buckets();
      const sources = { folder: this.#folder, manifest: this.#manifest, tails: this.#writer.tails };
      const statement = readSql(plan, found.holder, found.position, sources);
      if (statement === null) return sums.buckets();
      const changed = this.#damaged.changed(statement.files);
      if (changed.length > 0) throw damagedFault(changed);
      if (statement.usesMinutes) sums.usedMinutes();
      const connection = await this.#instance.connect();
      try {
        const cells = await connection.runAndReadAll(statement.sql);
        for (const cell of cells.getRows()) {
          const [bucket = NaN, min = NaN, sum = NaN, max = NaN, count = NaN] = cell.map(Number);
          sums.add(bucket, min, sum, max, count);
        }
      } catch (cause) {
        throw await readFault(connection, this.#folder, statement.files, found.position, cause, (names) =>
          this.#damaged.note(names),
        );
      } finally {
        connection.closeSync();
      }
      return sums.buckets();
    });
  }

  async readSeconds(query: SecondsQuery): Promise<HistorySeconds> {
    const { fromMs, toMs } = query;
    const [seconds] = await this.readTogether({ holders: [query], fromMs, toMs });
    if (seconds === undefined) throw new CodedError('HISTORY_FAULT', 'a read of one holder gave back none');
    return seconds;
  }

  async readTogether({ holders, ...span }: TogetherQuery): Promise<readonly HistorySeconds[]> {
    const plans = holders.map((one) => ({ ...span, ...secondsPlan({ ...one, ...span }) }));
    return this.#reading((connection, sources) =>
      readSeconds(connection, plans, this.#catalogue, sources, this.#damaged),
    );
  }

  readMinute(query: MinuteQuery): Promise<readonly HistoryMinute[]> {
    return this.#reading((connection, sources) =>
      readMinute(connection, query, this.#catalogue, sources, this.#damaged),
    );
  }

  #reading<Value>(job: (connection: DuckDBConnection, sources: ReadSources) => Promise<Value>): Promise<Value> {
    return this.#gate.read(async () => {
      const sources = { folder: this.#folder, manifest: this.#manifest, tails: this.#writer.tails };
      const connection = await this.#instance.connect();
      try {
        return await job(connection, sources);
      } finally {
        connection.closeSync();
      }
    });
  }

  maintain(nowMs: number, age: HistoryAge = { atMs: nowMs, atMostNewest: false }): Promise<void> {
    return this.#maintenanceQueue.run(async () => {
      await this.#lookForDamage();
      await this.#damaged.compare(this.#manifest.kept, comparedBytes);
      await this.#maintenance.run(nowMs, age);
      await this.#measure();
    });
  }

  health(): HistoryHealth {
    const tooOld = this.#writer.rowsTooOld;
    const left = tooOld === 0 ? [] : [`${tooOld} rows older than the seconds still kept were left out`];
    return {
      state: this.#writeFault === null ? 'ok' : 'failing',
      message: [...(this.#writeFault === null ? [] : [this.#writeFault]), ...left].join('; ') || null,
      damaged: this.#damaged.message(),
      rowsQueued: this.#writer.rowsQueued,
      bytesKept: this.#databaseBytes + this.#manifest.kept.reduce((sum, file) => sum + file.bytes, 0),
    };
  }

  async close(): Promise<void> {
    await this.#maintenanceQueue.idle();
    await this.#writer.between(() => Promise.resolve());
    await this.#gate.change(() => Promise.resolve());
    for (const connection of this.#connections) connection.closeSync();
    this.#instance.closeSync();
  }

  async #lookForDamage(): Promise<void> {
    const [, connection] = this.#connections;
    if (connection === undefined) return;
    await this.#damaged.look(this.#manifest.kept, (file) => canBeRead(connection, this.#folder, file, '*'));
  }

  async #measure(): Promise<void> {
    let bytes = 0;
    for (const name of [databaseFile, `${databaseFile}.wal`]) {
      bytes += await stat(join(this.#folder, name))
        .then((found) => found.size)
        .catch(() => 0);
    }
    this.#databaseBytes = bytes;
  }
}

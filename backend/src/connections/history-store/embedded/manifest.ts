import type { DuckDBConnection } from '@duckdb/node-api';

export type SealedKind = 'seconds' | 'minutes';

/** A sealed Parquet file: the rows of [startMs, startMs + spanMs), in unit order. */
export interface SealedFile {
  /** Path below the store's folder. */
  readonly name: string;
  readonly kind: SealedKind;
  readonly startMs: number;
  readonly spanMs: number;
  /** The group of holders that it holds, or null for all of them. */
  readonly group: number | null;
  /** Positions that it has columns for. */
  readonly width: number;
  readonly bytes: number;
  /** SHA-256 of what was sealed; null of files from before sums were kept. */
  readonly sum: string | null;
}

/** A file that is whole on the disk, and what it holds. */
export interface WrittenFile {
  readonly name: string;
  readonly bytes: number;
  readonly sum: string;
}

/**
 * Which files there are, in the database itself, so that a file and the rows that it replaces change in one
 * transaction. A file is named `pending` before it is written and `dropped` before it is deleted: what a
 * crash leaves behind is therefore known by name, and nothing that the manifest does not name is ever deleted.
 */
export class Manifest {
  readonly #connection: DuckDBConnection;
  #kept: SealedFile[] = [];
  #next = 1;
  #retiredBeforeMs = -Infinity;

  private constructor(connection: DuckDBConnection) {
    this.#connection = connection;
  }

  static async open(connection: DuckDBConnection): Promise<Manifest> {
    await connection.run(
      `CREATE TABLE IF NOT EXISTS sealed_part (number INTEGER NOT NULL, name VARCHAR NOT NULL, kind VARCHAR NOT NULL, start_ms BIGINT NOT NULL,
         span_ms BIGINT NOT NULL, holder_group INTEGER, width INTEGER NOT NULL, bytes BIGINT NOT NULL, state VARCHAR NOT NULL)`,
    );
    await connection.run('CREATE TABLE IF NOT EXISTS sealed_sum (name VARCHAR NOT NULL, sha256 VARCHAR NOT NULL)');
    await connection.run('CREATE TABLE IF NOT EXISTS retired (before_ms BIGINT NOT NULL)');
    const manifest = new Manifest(connection);
    await manifest.reload();
    return manifest;
  }

  get kept(): readonly SealedFile[] {
    return this.#kept;
  }

  /** Seconds before this were deleted by retention; only minutes are left of them. */
  get retiredBeforeMs(): number {
    return this.#retiredBeforeMs;
  }

  /** Files of a kind that lie within [fromMs, toMs). */
  within(kind: SealedKind, fromMs: number, toMs: number): SealedFile[] {
    return this.#kept.filter(
      (file) => file.kind === kind && file.startMs >= fromMs && file.startMs + file.spanMs <= toMs,
    );
  }

  /** Takes up what is committed. */
  async reload(): Promise<void> {
    const files = await this.#connection.runAndReadAll(
      `SELECT name, kind, start_ms, span_ms, holder_group, width, bytes, sha256
         FROM sealed_part LEFT JOIN sealed_sum USING (name) WHERE state = 'kept' ORDER BY start_ms, holder_group`,
    );
    this.#kept = files.getRows().map(([name, kind, startMs, spanMs, group, width, bytes, sum]) => ({
      name: String(name),
      kind: kind === 'minutes' ? 'minutes' : 'seconds',
      startMs: Number(startMs),
      spanMs: Number(spanMs),
      group: typeof group === 'number' ? group : null,
      width: Number(width),
      bytes: Number(bytes),
      sum: typeof sum === 'string' ? sum : null,
    }));
    const other = await this.#connection.runAndReadAll(
      'SELECT coalesce((SELECT max(number) FROM sealed_part), 0) + 1, (SELECT max(before_ms) FROM retired)',
    );
    const [next, retired] = other.getRows()[0] ?? [];
    this.#next = Math.max(this.#next, Number(next));
    this.#retiredBeforeMs = retired === null || retired === undefined ? -Infinity : Number(retired);
  }

  /** Names a file that is about to be written. */
  async announce({ kind, startMs, spanMs, group, width }: Omit<SealedFile, 'name' | 'bytes' | 'sum'>): Promise<string> {
    const number = this.#next++;
    const of = group === null ? '' : `-g${group}`;
    const time = new Date(startMs).toISOString().slice(0, 16).replace(':', '');
    const name = `${kind}/${time}${of}-${number}.parquet`;
    await this.#connection.run("INSERT INTO sealed_part VALUES ($1, $2, $3, $4, $5, $6, $7, 0, 'pending')", [
      number,
      name,
      kind,
      BigInt(startMs),
      BigInt(spanMs),
      group,
      width,
    ]);
    return name;
  }

  /** Within a transaction of the caller's. */
  async keep(connection: DuckDBConnection, { name, bytes, sum }: WrittenFile): Promise<void> {
    await connection.run("UPDATE sealed_part SET state = 'kept', bytes = $2 WHERE name = $1", [name, BigInt(bytes)]);
    await connection.run('INSERT INTO sealed_sum VALUES ($1, $2)', [name, sum]);
  }

  async drop(connection: DuckDBConnection, name: string): Promise<void> {
    await connection.run("UPDATE sealed_part SET state = 'dropped' WHERE name = $1", [name]);
  }

  async retire(connection: DuckDBConnection, beforeMs: number): Promise<void> {
    await connection.run('DELETE FROM retired');
    await connection.run('INSERT INTO retired VALUES ($1)', [BigInt(beforeMs)]);
  }

  /** Files that a crash left half-written, or that were replaced or retired and may still lie there. */
  async leftovers(): Promise<string[]> {
    const found = await this.#connection.runAndReadAll("SELECT name FROM sealed_part WHERE state <> 'kept'");
    return found.getRows().map(([name]) => String(name));
  }

  /** After the file itself is gone. */
  async forget(name: string): Promise<void> {
    await this.#connection.run("DELETE FROM sealed_part WHERE name = $1 AND state <> 'kept'", [name]);
    await this.#connection.run('DELETE FROM sealed_sum WHERE name NOT IN (SELECT name FROM sealed_part)');
  }
}

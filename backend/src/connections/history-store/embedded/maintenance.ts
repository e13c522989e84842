import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { DuckDBConnection } from '@duckdb/node-api';
import { hourMs, minuteMs } from '../history-query';
import { removeFile } from './durable-file';
import type { Manifest } from './manifest';
import type { ReadGate } from './read-gate';
import { expiredFiles, type Retention } from './retention';
import { sealHour, type WrittenFile } from './seal-hour';
import type { TailWriter } from './tail-writer';
import type { TailTable } from './tail-tables';

/** An hour is sealed so long after its end, so that most late rows find it open. */
const sealAfterMs = 10 * minuteMs;
/** Rows that came after the seal are merged in at most so often, since that rewrites the hour's file. */
const mergeLateEveryMs = hourMs;

/** Seals what is old enough, deletes what retention no longer keeps. Driven by its caller's clock alone. */
export class Maintenance {
  readonly #connection: DuckDBConnection;
  readonly #folder: string;
  readonly #manifest: Manifest;
  readonly #writer: TailWriter;
  readonly #gate: ReadGate;
  readonly #retention: Retention;
  readonly #lateSinceMs = new Map<number, number>();

  constructor(parts: {
    readonly connection: DuckDBConnection;
    readonly folder: string;
    readonly manifest: Manifest;
    readonly writer: TailWriter;
    readonly gate: ReadGate;
    readonly retention: Retention;
  }) {
    this.#connection = parts.connection;
    this.#folder = parts.folder;
    this.#manifest = parts.manifest;
    this.#writer = parts.writer;
    this.#gate = parts.gate;
    this.#retention = parts.retention;
  }

  /** Deletes what a crash left half-done; before anything else is done with the folder. */
  async recover(): Promise<void> {
    for (const kind of ['seconds', 'minutes']) await mkdir(join(this.#folder, kind), { recursive: true });
    await this.#sweep();
  }

  async run(nowMs: number): Promise<void> {
    const doomed = expiredFiles(this.#manifest.kept, nowMs, this.#retention).retireBeforeMs ?? -Infinity;
    for (const hour of this.#hoursDue(nowMs, doomed)) {
      const tails = await this.#writer.closeHour(hour);
      const written = await sealHour(this.#connection, this.#folder, this.#manifest, hour, tails);
      await this.#enforce(written, tails);
      this.#lateSinceMs.delete(hour);
    }
    await this.#expire(nowMs);
    await this.#sweep();
  }

  #hoursDue(nowMs: number, doomedBeforeMs: number): number[] {
    const sealed = new Set(this.#manifest.kept.filter((file) => file.kind === 'seconds').map((file) => file.startMs));
    const hours = [...new Set(this.#writer.tails.map((table) => table.hourMs))].sort((a, b) => a - b);
    return hours.filter((hour) => {
      if (hour < doomedBeforeMs) return true;
      if (!sealed.has(hour)) return hour + hourMs + sealAfterMs <= nowMs;
      const since = this.#lateSinceMs.get(hour) ?? nowMs;
      this.#lateSinceMs.set(hour, since);
      return since + mergeLateEveryMs <= nowMs;
    });
  }

  /** In one transaction the new files are in force, the old ones are not, and the tails are gone. */
  async #enforce(written: readonly WrittenFile[], tails: readonly TailTable[]): Promise<void> {
    await this.#change(async (connection) => {
      for (const { name, bytes, replaces } of written) {
        if (replaces !== null) await this.#manifest.drop(connection, replaces);
        await this.#manifest.keep(connection, name, bytes);
      }
      for (const table of tails) await connection.run(`DROP TABLE ${table.name}`);
    });
    this.#writer.forget(tails);
  }

  async #expire(nowMs: number): Promise<void> {
    const { files, retireBeforeMs } = expiredFiles(this.#manifest.kept, nowMs, this.#retention);
    if (files.length === 0) return;
    await this.#change(async (connection) => {
      for (const { name } of files) await this.#manifest.drop(connection, name);
      if (retireBeforeMs !== null) await this.#manifest.retire(connection, retireBeforeMs);
    });
  }

  #change(job: (connection: DuckDBConnection) => Promise<void>): Promise<void> {
    return this.#gate.change(() =>
      this.#writer.between(async (connection) => {
        await connection.run('BEGIN');
        try {
          await job(connection);
          await connection.run('COMMIT');
        } catch (fault) {
          await connection.run('ROLLBACK').catch(() => undefined);
          throw fault;
        }
        await this.#manifest.reload();
      }),
    );
  }

  async #sweep(): Promise<void> {
    for (const name of await this.#manifest.leftovers()) {
      await removeFile(join(this.#folder, name));
      await this.#manifest.forget(name);
    }
  }
}

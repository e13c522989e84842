import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { DuckDBConnection } from '@duckdb/node-api';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { HistoryAge } from '../../../ports/history-store';
import { failpoint } from '../../../ports/failpoint';
import { dayMs, hourMs, minuteMs } from '../history-query';
import { removeFile } from './durable-file';
import { foldDay, minutesOfDay } from './fold-day';
import type { Manifest } from './manifest';
import type { ReadGate } from './read-gate';
import { expiredBefore, expiredFiles, type Retention } from './retention';
import { sealHour } from './seal-hour';
import type { TailWriter } from './tail-writer';
import type { TailTable } from './tail-tables';
import { isOfDamage } from './unchanged-files';
import type { Sealed, Sealing } from './write-sealed';

/** An hour is sealed so long after its end, so that most late rows find it open. */
const sealAfterMs = 10 * minuteMs;
/** Rows that came after the seal are merged in at most so often, since that rewrites the hour's file. */
const mergeLateEveryMs = hourMs;
/** A day's minutes are folded so long after its end, and again at most so often for rows that came later. */
const foldAfterMs = 2 * hourMs;
const foldAgainEveryMs = dayMs;

/** Seals what is old enough, deletes what retention no longer keeps. Driven by its caller's clock alone. */
export class Maintenance {
  readonly #connection: DuckDBConnection;
  readonly #folder: string;
  readonly #manifest: Manifest;
  readonly #writer: TailWriter;
  readonly #gate: ReadGate;
  readonly #retention: Retention;
  readonly #valuesAtOnce: number;
  readonly #lateSinceMs = new Map<number, number>();
  readonly #foldedAtMs = new Map<number, number>();

  constructor(parts: {
    readonly connection: DuckDBConnection;
    readonly folder: string;
    readonly manifest: Manifest;
    readonly writer: TailWriter;
    readonly gate: ReadGate;
    readonly retention: Retention;
    readonly valuesAtOnce: number;
  }) {
    this.#connection = parts.connection;
    this.#folder = parts.folder;
    this.#manifest = parts.manifest;
    this.#writer = parts.writer;
    this.#gate = parts.gate;
    this.#retention = parts.retention;
    this.#valuesAtOnce = parts.valuesAtOnce;
  }

  /** Deletes what a crash left half-done; before anything else is done with the folder. */
  async recover(): Promise<void> {
    for (const kind of ['seconds', 'minutes']) await mkdir(join(this.#folder, kind), { recursive: true });
    await this.#sweep();
  }

  /**
   * What fails does not hold up the rest: one hour that cannot be sealed leaves the others to be, and room is made by
   * retention even where nothing could be sealed for want of it.
   * @throws CodedError HISTORY_MAINTAIN_FAILED the first fault, when all else is done
   */
  async run(nowMs: number, age: HistoryAge): Promise<void> {
    const faults: Error[] = [];
    const attempt = (job: () => Promise<void>): Promise<void> =>
      job().catch((fault: unknown) => void faults.push(fault instanceof Error ? fault : new Error(String(fault))));
    // First, so that what an earlier attempt committed and could not take up is in force, and what it left half-written takes no room.
    await attempt(() => this.#manifest.reload());
    await attempt(() => this.#sweep());
    const agedAtMs = this.#agedAtMs(age);
    const doomed = expiredFiles(this.#manifest.kept, agedAtMs, this.#retention).retireBeforeMs ?? -Infinity;
    const spoilt = new Set<number>();
    for (const hour of this.#hoursDue(nowMs, doomed))
      await attempt(() =>
        this.#seal(hour).catch((fault: unknown) => {
          if (isOfDamage(fault)) spoilt.add(hour);
          throw fault;
        }),
      );
    for (const day of this.#daysDue(nowMs)) await attempt(() => this.#fold(day, nowMs));
    await attempt(() => this.#expire(agedAtMs, spoilt));
    await attempt(() => this.#sweep());
    const [cause] = faults;
    if (cause === undefined) return;
    const said = (cause.message.split('\n')[0] ?? '').replaceAll(this.#folder, '').slice(0, 300);
    const what = `history could not be sealed or cleared: ${said}; nothing is lost, and it is tried again; look at the disk space, the permissions and the files of the data folder`;
    throw new CodedError('HISTORY_MAINTAIN_FAILED', what, { cause });
  }

  get #sealing(): Sealing {
    const [connection, folder, manifest] = [this.#connection, this.#folder, this.#manifest];
    return { connection, folder, manifest, valuesAtOnce: this.#valuesAtOnce };
  }

  async #seal(hour: number): Promise<void> {
    const tails = await this.#writer.closeHour(hour);
    await this.#enforce(await sealHour(this.#sealing, hour, tails), tails);
    this.#lateSinceMs.delete(hour);
  }

  async #fold(day: number, nowMs: number): Promise<void> {
    await this.#enforce(await foldDay(this.#sealing, day), []);
    this.#foldedAtMs.set(day, nowMs);
  }

  #daysDue(nowMs: number): number[] {
    const days = new Set(this.#manifest.kept.map(({ startMs }) => startMs - (startMs % dayMs)));
    return [...days].filter((day) => {
      if (day + dayMs + foldAfterMs > nowMs || minutesOfDay(this.#manifest, day).slices.length === 0) return false;
      return nowMs - (this.#foldedAtMs.get(day) ?? -Infinity) >= foldAgainEveryMs;
    });
  }

  #hoursDue(nowMs: number, doomedBeforeMs: number): number[] {
    const sealed = new Set(
      this.#manifest.kept.filter((file) => file.kind === 'seconds').map(({ startMs }) => startMs - (startMs % hourMs)),
    );
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
  async #enforce({ written, replaced }: Sealed, tails: readonly TailTable[]): Promise<void> {
    const names = new Set(tails.map(({ name }) => name));
    const isSealed = ({ name }: TailTable): boolean => names.has(name);
    await this.#change(isSealed, async (connection) => {
      for (const { name } of replaced) await this.#manifest.drop(connection, name);
      for (const file of written) await this.#manifest.keep(connection, file);
      failpoint('seal-mid-manifest');
    });
    failpoint('seal-after-manifest');
  }

  /** Of the newest row its hour, since files go by whole hours. */
  #agedAtMs({ atMs, atMostNewest }: HistoryAge): number {
    if (!atMostNewest) return atMs;
    const begins = [
      ...this.#manifest.kept.map((file) => file.startMs),
      ...this.#writer.tails.map((table) => table.hourMs),
    ];
    return Math.min(
      atMs,
      begins.reduce((newest, startMs) => Math.max(newest, startMs), -Infinity),
    );
  }

  /** @param spoilt hours whose seconds are damaged: late rows can't be sealed with them, and go at the same time */
  async #expire(agedAtMs: number, spoilt: ReadonlySet<number>): Promise<void> {
    const expired = expiredFiles(this.#manifest.kept, agedAtMs, this.#retention);
    const waiting = this.#writer.tails.filter((table) => !spoilt.has(table.hourMs)).map((table) => table.hourMs);
    const { files, retireBeforeMs } = expiredBefore(Math.min(...waiting), expired);
    if (files.length === 0) return;
    const isLost = ({ hourMs: at }: TailTable): boolean => spoilt.has(at) && at < (retireBeforeMs ?? -Infinity);
    const lost = await this.#change(isLost, async (connection) => {
      for (const { name } of files) await this.#manifest.drop(connection, name);
      if (retireBeforeMs !== null) await this.#manifest.retire(connection, retireBeforeMs);
      failpoint('retention-mid-manifest');
    });
    for (const { hourMs: at } of lost) this.#lateSinceMs.delete(at);
  }

  /**
   * Tails that go are forgotten before readers come in again, or these would ask for tables that are gone.
   * @returns the tails that went
   */
  #change(
    goes: (table: TailTable) => boolean,
    job: (connection: DuckDBConnection) => Promise<void>,
  ): Promise<readonly TailTable[]> {
    return this.#gate.change(() =>
      this.#writer.between(async (connection) => {
        const going = this.#writer.tails.filter(goes);
        await connection.run('BEGIN');
        try {
          await job(connection);
          for (const { name } of going) await connection.run(`DROP TABLE ${name}`);
          await connection.run('COMMIT');
        } catch (fault) {
          await connection.run('ROLLBACK').catch(() => undefined);
          throw fault;
        }
        this.#writer.forget(going);
        await this.#manifest.reload();
        return going;
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

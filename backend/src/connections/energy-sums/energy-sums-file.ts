import { failpoint } from '../../ports/failpoint';
import type { DayToKeep, KeptEnergy, KeptSums } from '../../ports/kept-energy';
import { bytesOf, guardOf, sumsOf } from './guarded-sums';
import { openSumsDatabase, removeSums, type SumsDatabase } from './sums-database';

/** Name of the file within the data folder. */
export const energySumsFileName = 'energy-sums.sqlite';

type Row = [startMs: number, endMs: number, guard: number, sums: Uint8Array];

/**
 * Sums of energy in one SQLite file. A file that can't be read or written is removed and begun anew, once a call; where that fails
 * too, the sums are done without until the next start.
 */
export class EnergySumsFile implements KeptEnergy {
  readonly #path: string;
  readonly #source: string;
  #database: SumsDatabase | null = null;
  #untilMs = -Infinity;

  /** @param source which history the sums are made from: those of another one are forgotten */
  constructor(path: string, source: string) {
    this.#path = path;
    this.#source = source;
    this.#open();
  }

  read(of: 'day' | 'hours', holder: string, recipe: string, fromMs: number, toMs: number): readonly KeptSums[] {
    return this.#with([], (database) => {
      const id = recipeId(database, recipe);
      if (id === null) return [];
      const rows = database
        .prepare(
          `SELECT start_ms, end_ms, guard, sums FROM ${of} WHERE holder = ? AND start_ms >= ? AND start_ms < ? AND recipe = ? ORDER BY start_ms`,
        )
        .raw()
        .all(holder, fromMs, toMs, id) as Row[];
      return rows.flatMap(([startMs, endMs, guard, bytes]) => {
        const sums = sumsOf(bytes);
        const isSound = sums !== null && guardOf(holder, startMs, endMs, id, bytes) === guard;
        return isSound ? [{ startMs, endMs, sums }] : [];
      });
    });
  }

  keep(holder: string, recipe: string, days: readonly DayToKeep[]): void {
    if (days.length === 0) return;
    this.#with(undefined, (database) => {
      database.transaction(() => {
        database.prepare('INSERT OR IGNORE INTO recipe (text) VALUES (?)').run(recipe);
        const id = recipeId(database, recipe);
        if (id === null) throw new Error('a recipe is not there after it was written');
        for (const of of ['day', 'hours'] as const) {
          const put = database.prepare(
            `INSERT OR REPLACE INTO ${of} (holder, start_ms, end_ms, recipe, guard, sums) VALUES (?, ?, ?, ?, ?, ?)`,
          );
          for (const { startMs, endMs, [of]: sums } of days) {
            const bytes = bytesOf(sums);
            put.run(holder, startMs, endMs, id, guardOf(holder, startMs, endMs, id, bytes), Buffer.from(bytes));
          }
          failpoint('energy-mid-write');
        }
      })();
      failpoint('energy-after-write');
      for (const { endMs } of days) this.#untilMs = Math.max(this.#untilMs, endMs);
    });
  }

  untilMs(): number {
    return this.#untilMs;
  }

  forget(holder: string, fromMs: number, toMs: number): void {
    this.#with(undefined, (database) => {
      // On the disk before the rows that it makes way for; what is kept may be lost with the power.
      database.pragma('synchronous = FULL');
      database.transaction(() => {
        for (const of of ['day', 'hours'])
          database
            .prepare(`DELETE FROM ${of} WHERE holder = ? AND start_ms <= ? AND end_ms > ?`)
            .run(holder, toMs, fromMs);
        failpoint('energy-mid-forget');
      })();
      database.pragma('synchronous = NORMAL');
    });
  }

  close(): void {
    this.#database?.close();
    this.#database = null;
  }

  #open(): void {
    this.#untilMs = -Infinity;
    try {
      const database = openSumsDatabase(this.#path, this.#source);
      this.#database = database;
      const [untilMs] = database.prepare('SELECT max(end_ms) FROM day').raw().get() as [number | null];
      this.#untilMs = untilMs ?? -Infinity;
    } catch {
      // Nothing original is lost: every sum is added up from history again, which takes longer.
      this.#database = null;
    }
  }

  /** A damaged page shows when it is met: then all is forgotten, since a sum that can't be forgotten might be wrong one day. */
  #with<Value>(otherwise: Value, job: (database: SumsDatabase) => Value): Value {
    if (this.#database === null) return otherwise;
    try {
      return job(this.#database);
    } catch {
      this.close();
      removeSums(this.#path);
      this.#open();
      return otherwise;
    }
  }
}

function recipeId(database: SumsDatabase, text: string): number | null {
  const found = database.prepare('SELECT id FROM recipe WHERE text = ?').raw().get(text) as [number] | undefined;
  return found?.[0] ?? null;
}

import type { DuckDBConnection } from '@duckdb/node-api';
import { failpoint } from '../../../ports/failpoint';
import type { HistoryLayout } from '../../../ports/history-store';

/** Where the values of one holder of the layout in force go. */
export interface HolderPlaces {
  readonly holder: number;
  /** Position of each column of the layout. */
  readonly positions: Int32Array;
  /** Column of the layout at each position, −1 where the layout has none; the other way round of `positions`. */
  readonly columns: Int32Array;
}

/**
 * Numbers of holders, and positions of (point, unit of measure) within a holder. Both are given out once, in order,
 * and never changed or given again; so a row is (holder, second, p0 … pN) whatever the points are called, and holders
 * share columns. A table is as wide as its widest holder.
 */
export class Catalogue {
  readonly #connection: DuckDBConnection;
  readonly #holders = new Map<string, number>();
  readonly #positions: Map<string, number>[] = [];

  private constructor(connection: DuckDBConnection) {
    this.#connection = connection;
  }

  static async open(connection: DuckDBConnection): Promise<Catalogue> {
    await connection.run('CREATE TABLE IF NOT EXISTS holder (id VARCHAR NOT NULL, number INTEGER NOT NULL)');
    await connection.run(
      'CREATE TABLE IF NOT EXISTS place (holder INTEGER NOT NULL, point VARCHAR NOT NULL, unit VARCHAR NOT NULL, position INTEGER NOT NULL)',
    );
    const catalogue = new Catalogue(connection);
    const holders = await connection.runAndReadAll('SELECT id, number FROM holder ORDER BY number');
    for (const [id, number] of holders.getRows()) catalogue.#learnHolder(String(id), Number(number));
    const places = await connection.runAndReadAll('SELECT holder, point, unit, position FROM place');
    for (const [holder, point, unit, position] of places.getRows()) {
      catalogue.#positions[Number(holder)]?.set(key(String(point), String(unit)), Number(position));
    }
    return catalogue;
  }

  /** Greatest number of positions that any holder has. */
  get width(): number {
    return this.#positions.reduce((most, positions) => Math.max(most, positions.size), 0);
  }

  find(holder: string, point: string, unit: string): { holder: number; position: number } | null {
    const number = this.#holders.get(holder);
    const position = number === undefined ? undefined : this.#positions[number]?.get(key(point, unit));
    return number === undefined || position === undefined ? null : { holder: number, position };
  }

  /** Gives numbers and positions to what is new, commits them, and says where each column goes. */
  async place(layout: HistoryLayout): Promise<readonly HolderPlaces[]> {
    const newHolders: [string, number][] = [];
    const newPlaces: [number, string, string, number][] = [];
    const numberOf = (id: string, at: number): number => this.#holders.get(id) ?? this.#holders.size + at;
    const places = layout.holders.map(({ id, columns }) => {
      const holder = numberOf(id, newHolders.length);
      if (!this.#holders.has(id)) newHolders.push([id, holder]);
      const known = this.#positions[holder] ?? new Map<string, number>();
      let next = known.size;
      const positions = columns.map(({ point, unitOfMeasure }) => {
        const position = known.get(key(point, unitOfMeasure));
        if (position !== undefined) return position;
        newPlaces.push([holder, point, unitOfMeasure, next]);
        return next++;
      });
      return { holder, positions: Int32Array.from(positions), columns: inverseOf(positions, next) };
    });
    if (newHolders.length + newPlaces.length > 0) await this.#commit(newHolders, newPlaces);
    for (const [id, number] of newHolders) this.#learnHolder(id, number);
    for (const [holder, point, unit, position] of newPlaces) this.#positions[holder]?.set(key(point, unit), position);
    return places;
  }

  async #commit(holders: [string, number][], places: [number, string, string, number][]): Promise<void> {
    const connection = this.#connection;
    await connection.run('BEGIN');
    try {
      const toHolder = await connection.createAppender('holder');
      for (const [id, number] of holders) {
        toHolder.appendVarchar(id);
        toHolder.appendInteger(number);
        toHolder.endRow();
      }
      toHolder.closeSync();
      const toPlace = await connection.createAppender('place');
      for (const [holder, point, unit, position] of places) {
        toPlace.appendInteger(holder);
        toPlace.appendVarchar(point);
        toPlace.appendVarchar(unit);
        toPlace.appendInteger(position);
        toPlace.endRow();
      }
      toPlace.closeSync();
      failpoint('layout-mid-commit');
      await connection.run('COMMIT');
    } catch (fault) {
      await connection.run('ROLLBACK');
      throw fault;
    }
  }

  #learnHolder(id: string, number: number): void {
    this.#holders.set(id, number);
    this.#positions[number] = new Map();
  }
}

function inverseOf(positions: readonly number[], size: number): Int32Array {
  const columns = new Int32Array(size).fill(-1);
  positions.forEach((position, column) => (columns[position] = column));
  return columns;
}

const key = (point: string, unit: string): string => `${point}\n${unit}`;

import type { DuckDBConnection } from '@duckdb/node-api';

/** A table of rows not yet sealed: those of one hour, up to a moment at which sealing closed it and a next one began. */
export interface TailTable {
  readonly name: string;
  readonly hourMs: number;
  readonly generation: number;
  /** Columns p0 … p(width − 1). */
  readonly width: number;
  readonly open: boolean;
}

export const positionColumns = (width: number): string[] => Array.from({ length: width }, (_, index) => `p${index}`);

const namePattern = /^tail_(\d+)_(\d+)$/;

export async function loadTailTables(connection: DuckDBConnection): Promise<TailTable[]> {
  const found = await connection.runAndReadAll('SELECT table_name, column_count FROM duckdb_tables() ORDER BY 1');
  return found.getRows().flatMap(([name, columns]): TailTable[] => {
    const [, hour, generation] = namePattern.exec(String(name)) ?? [];
    if (hour === undefined) return [];
    // Closed on start: the width may have to grow, and a half-sealed hour is sealed from closed tables only.
    return [
      {
        name: String(name),
        hourMs: Number(hour),
        generation: Number(generation),
        width: Number(columns) - fixedColumns,
        open: false,
      },
    ];
  });
}

const fixedColumns = 3;

export function nextTailTable(hourMs: number, width: number, existing: readonly TailTable[]): TailTable {
  const generation = existing.reduce((most, table) => Math.max(most, table.generation), 0) + 1;
  return { name: `tail_${hourMs}_${generation}`, hourMs, generation, width, open: true };
}

/**
 * NaN stands for "nothing" in p0 … pN of a tail, since the client marks a NULL at ten times the cost of a value;
 * `tailRows` turns it into NULL, and nothing else reads a tail.
 */
export async function createTailTable(connection: DuckDBConnection, table: TailTable): Promise<void> {
  const values = positionColumns(table.width).map((column) => `${column} DOUBLE NOT NULL`);
  await connection.run(
    `CREATE TABLE ${table.name} (${['holder INTEGER NOT NULL', 'second BIGINT NOT NULL', 'quality BLOB', ...values].join(', ')})`,
  );
}

/** `value` of one position, nothing as NULL. */
export const tailValue = (position: number): string => `nullif(p${position}, 'nan'::DOUBLE)`;

/** When a row was written, as one number that grows over the tables of an hour; sealed rows count as 0. */
export const writtenOrder = (table: TailTable): string => `(${table.generation}::BIGINT << 40) + rowid`;

import { join } from 'node:path';
import type { SealedFile } from './manifest';
import { positionColumns, tailValue, writtenOrder, type TailTable } from './tail-tables';

/** Holders whose minutes of a day share a file: bounds the memory that the folding of a day takes. */
export const holdersPerGroup = 128;
export const groupOf = (holder: number): number => Math.floor(holder / holdersPerGroup);

export interface Span {
  readonly startMs: number;
  readonly spanMs: number;
}

export const sqlText = (text: string): string => `'${text.replaceAll("'", "''")}'`;

/** Rows of a table or file with p0 … p(width − 1), NULL for what it has no column for, and when they were written. */
export const tailRows = (table: TailTable, width: number): string =>
  select(
    positionColumns(width).map((column, position) =>
      position < table.width ? `${tailValue(position)} AS ${column}` : `NULL::DOUBLE AS ${column}`,
    ),
    writtenOrder(table),
    table.name,
  );

/** A list of files as `read_parquet` takes it. */
export const pathsOf = (folder: string, files: readonly { readonly name: string }[]): string =>
  `[${files.map(({ name }) => sqlText(join(folder, name))).join(', ')}]`;

export const fileRows = (path: string, file: SealedFile, width: number): string =>
  select(
    positionColumns(width).map((column, position) => (position < file.width ? column : `NULL::DOUBLE AS ${column}`)),
    '0::BIGINT',
    `read_parquet(${sqlText(path)})`,
  );

const select = (values: readonly string[], written: string, from: string): string =>
  `SELECT ${['holder', 'second', 'quality', ...values, `${written} AS written`].join(', ')} FROM ${from}`;

/** Restricts to [startMs, startMs + spanMs). */
export const inSpan = (column: 'second' | 'minute', { startMs, spanMs }: Span): string =>
  `${column} >= ${startMs} AND ${column} < ${startMs + spanMs}`;

/** Restricts to some holders. */
export const ofHolders = (holders: readonly number[]): string =>
  holders.length === 1 ? `holder = ${holders[0] ?? -1}` : `holder IN (${holders.join(', ')})`;

/** Restricts to the holders of a group. */
export const inGroup = (group: number): string =>
  `holder >= ${group * holdersPerGroup} AND holder < ${(group + 1) * holdersPerGroup}`;

/** Columns of the minutes made from one position. */
export const minuteColumns = (position: number): readonly [min: string, mean: string, max: string, count: string] => [
  `p${position}_min`,
  `p${position}_mean`,
  `p${position}_max`,
  `p${position}_count`,
];

export const minuteColumnsUpTo = (width: number): string[] =>
  Array.from({ length: width }, (_, position) => minuteColumns(position)).flat();

/** 1-minute figures of seconds: one row a (holder, minute). */
export function minutesOf(source: string, width: number): string {
  const figures = Array.from({ length: width }, (_, position) => {
    const [min, mean, max, count] = minuteColumns(position);
    const column = `p${position}`;
    return `min(${column}) AS ${min}, avg(${column}) AS ${mean}, max(${column}) AS ${max}, count(${column})::UTINYINT AS ${count}`;
  });
  const columns = ['holder', 'second - second % 60000 AS minute', ...figures].join(', ');
  return `SELECT ${columns} FROM (${source}) GROUP BY holder, second - second % 60000`;
}

export function copyToParquet(source: string, path: string, rowGroup: number): string {
  return `COPY (${source}) TO ${sqlText(path)} (FORMAT parquet, COMPRESSION zstd, PARQUET_VERSION v2, ROW_GROUP_SIZE ${rowGroup})`;
}

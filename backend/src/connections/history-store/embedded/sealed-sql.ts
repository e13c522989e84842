import type { SealedFile } from './manifest';
import { positionColumns, tailValue, writtenOrder, type TailTable } from './tail-tables';

/** Holders whose rows share a file: bounds the memory of a seal, and a read opens only its own group's files. */
export const holdersPerGroup = 128;
export const groupOf = (holder: number): number => Math.floor(holder / holdersPerGroup);

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

export const fileRows = (path: string, file: SealedFile, width: number): string =>
  select(
    positionColumns(width).map((column, position) => (position < file.width ? column : `NULL::DOUBLE AS ${column}`)),
    '0::BIGINT',
    `read_parquet(${sqlText(path)})`,
  );

const select = (values: readonly string[], written: string, from: string): string =>
  `SELECT ${['holder', 'second', 'quality', ...values, `${written} AS written`].join(', ')} FROM ${from}`;

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

/** `1-minute figures of seconds: one row a (holder, minute). */
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

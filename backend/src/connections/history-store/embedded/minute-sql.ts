import type { SealedFile } from './manifest';
import { minuteSources, type ReadSources } from './read-sql';
import type { SamePlaces } from './same-places';
import { groupOf, minuteColumns, ofHolders, pathsOf } from './sealed-sql';

export interface MinuteSql {
  /** Rows (number of the holder, then least, mean, most and count of each column); NaN and 0 where nothing is. */
  readonly sql: string;
  readonly files: readonly SealedFile[];
}

/** One minute of holders at some positions, from what was sealed by the minute; null where none of it was. */
export function minuteSql(
  minuteMs: number,
  { positions, holders }: SamePlaces,
  { folder, manifest }: ReadSources,
): MinuteSql | null {
  const numbers = holders.map(({ number }) => number);
  const files = manifest.kept.filter(
    ({ kind, group, startMs, spanMs }) =>
      kind === 'minutes' &&
      startMs <= minuteMs &&
      startMs + spanMs > minuteMs &&
      (group === null || numbers.some((number) => group === groupOf(number))),
  );
  if (files.length === 0) return null;
  const selects = [...new Set(files.map(({ width }) => width))].flatMap((width) => {
    const figures = positions.flatMap((position) => (position < width ? figuresOf(position) : absent));
    const alike = files.filter((file) => file.width === width);
    return minuteSources(alike, manifest).map(
      ({ files: of, where }) =>
        `SELECT holder, ${figures.join(', ')} FROM read_parquet(${pathsOf(folder, of)}) WHERE minute = ${minuteMs} AND ${ofHolders(numbers)} AND ${where}`,
    );
  });
  return { sql: selects.join(' UNION ALL '), files };
}

const nan = "'nan'::DOUBLE";
const absent = [nan, nan, nan, '0'];

function figuresOf(position: number): string[] {
  const [min, mean, max, count] = minuteColumns(position);
  return [...[min, mean, max].map((column) => `coalesce(${column}, ${nan})`), `coalesce(${count}, 0)::INTEGER`];
}

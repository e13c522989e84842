import { hourMs, secondMs, type SecondsPlan } from '../history-query';
import type { SealedFile } from './manifest';
import type { ReadSources } from './read-sql';
import { groupOf, pathsOf } from './sealed-sql';
import { tailValue, writtenOrder } from './tail-tables';

export interface SecondsSql {
  /** Rows (place of the second, values …, marks …), later writes of a second after earlier ones. A mark of −1: by the value. */
  readonly sql: string;
  readonly files: readonly SealedFile[];
}

/** Seconds of one holder at some positions; null where there is nothing to read from. */
export function secondsSql(
  plan: SecondsPlan,
  holder: number,
  positions: readonly number[],
  { folder, manifest, tails }: ReadSources,
): SecondsSql | null {
  const { fromMs, toMs } = plan;
  const overlaps = (startMs: number, spanMs: number): boolean => startMs < toMs && startMs + spanMs > fromMs;
  const where = `WHERE holder = ${holder} AND second >= ${fromMs} AND second < ${toMs}`;
  const place = `((second - ${fromMs}) // ${secondMs})::INTEGER`;
  const select = (width: number, value: (position: number) => string, written: string, from: string): string => {
    const has = (position: number): boolean => position < width;
    const values = positions.map((position) => (has(position) ? value(position) : 'NULL::DOUBLE'));
    const marks = positions.map((position) => (has(position) ? markAt(position) : '-1'));
    const named = [
      `${place} AS s`,
      ...values.map((text, i) => `${text} AS v${i}`),
      ...marks.map((text, i) => `${text} AS m${i}`),
    ];
    return `SELECT ${named.join(', ')}, ${written} AS w FROM ${from} ${where}`;
  };

  const files = manifest.kept.filter(
    ({ kind, group, startMs, spanMs }) =>
      kind === 'seconds' && (group === null || group === groupOf(holder)) && overlaps(startMs, spanMs),
  );
  const widths = [...new Set(files.map(({ width }) => width))];
  const parts = [
    ...widths.map((width) => {
      const alike = pathsOf(
        folder,
        files.filter((file) => file.width === width),
      );
      return select(width, (position) => `p${position}`, '0::BIGINT', `read_parquet(${alike})`);
    }),
    ...tails
      .filter(({ hourMs: startMs }) => overlaps(startMs, hourMs))
      .map((table) => select(table.width, tailValue, writtenOrder(table), table.name)),
  ];
  if (parts.length === 0) return null;
  const columns = ['s', ...positions.map((_, i) => `v${i}`), ...positions.map((_, i) => `m${i}`)].join(', ');
  return { sql: `SELECT ${columns} FROM (${parts.join(' UNION ALL ')}) ORDER BY w`, files };
}

/** A mark is one byte, 0 to 3: the lower digit of its hexadecimal. A row without marks is good wherever it has a value. */
const markAt = (position: number): string =>
  `CASE WHEN quality IS NULL THEN -1 ELSE greatest(ascii(substr(hex(quality), ${2 * position + 2}, 1)) - 48, 0) END::INTEGER`;

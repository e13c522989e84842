import type { TogetherQuery } from '../../../ports/history-store';
import { hourMs, minuteMs, secondMs, type SecondsPlan } from '../history-query';
import type { SealedFile } from './manifest';
import type { ReadSources } from './read-sql';
import type { SamePlaces } from './same-places';
import { groupOf, ofHolders, pathsOf } from './sealed-sql';
import { writtenOrder } from './tail-tables';

export interface SecondsSql {
  /**
   * Rows (place of the second, values …, packed marks …, and of several holders the number of its), later writes of a second after
   * earlier ones; a value that is not there is NaN. Marks of `marksAtOnce` columns stand in one number of two bits each; −1: by the
   * values.
   */
  readonly sql: string;
  readonly files: readonly SealedFile[];
}

/** Two bits each, within an INTEGER. */
export const marksAtOnce = 12;

/** Seconds of holders at some positions; null where there is nothing to read from. */
export function secondsSql(
  plan: Pick<SecondsPlan, 'fromMs' | 'toMs'> & Pick<TogetherQuery, 'ofEachMinuteMs'>,
  { positions, holders }: SamePlaces,
  { folder, manifest, tails }: ReadSources,
): SecondsSql | null {
  const { fromMs, toMs } = plan;
  const overlaps = (startMs: number, spanMs: number): boolean => startMs < toMs && startMs + spanMs > fromMs;
  const { ofEachMinuteMs } = plan;
  const within = ofEachMinuteMs === undefined ? '' : ` AND second % ${minuteMs} < ${ofEachMinuteMs}`;
  const numbers = holders.map(({ number }) => number);
  const where = `WHERE ${ofHolders(numbers)} AND second >= ${fromMs} AND second < ${toMs}${within}`;
  const many = numbers.length > 1 ? ['holder'] : [];
  const place = `((second - ${fromMs}) // ${secondMs})::INTEGER AS s`;
  const select = (width: number, value: (position: number) => string, written: string, from: string): string => {
    const values = positions.map((position, i) => `${position < width ? value(position) : nothing} AS v${i}`);
    const marks = groupsOf(positions).map((group, i) => `${packedMarks(group)} AS m${i}`);
    return `SELECT ${[place, ...values, ...marks, ...many].join(', ')}, ${written} AS w FROM ${from} ${where}`;
  };

  const files = manifest.kept.filter(
    ({ kind, group, startMs, spanMs }) =>
      kind === 'seconds' &&
      (group === null || numbers.some((number) => group === groupOf(number))) &&
      overlaps(startMs, spanMs),
  );
  const widths = [...new Set(files.map(({ width }) => width))];
  const sealed = widths.map((width) => {
    const alike = pathsOf(
      folder,
      files.filter((file) => file.width === width),
    );
    return select(width, (position) => `coalesce(p${position}, ${nothing})`, '0::BIGINT', `read_parquet(${alike})`);
  });
  const unsealed = tails
    .filter(({ hourMs: startMs }) => overlaps(startMs, hourMs))
    .map((table) => select(table.width, (position) => `p${position}`, writtenOrder(table), table.name));
  const parts = [...sealed, ...unsealed];
  if (parts.length === 0) return null;
  const marked = groupsOf(positions).map((_, i) => `m${i}`);
  const columns = ['s', ...positions.map((_, i) => `v${i}`), ...marked, ...many].join(', ');
  // Sealed files have each second once.
  const order = unsealed.length === 0 ? '' : ' ORDER BY w';
  return { sql: `SELECT ${columns} FROM (${parts.join(' UNION ALL ')})${order}`, files };
}

const nothing = "'nan'::DOUBLE";

const groupsOf = (positions: readonly number[]): readonly (readonly number[])[] =>
  Array.from({ length: Math.ceil(positions.length / marksAtOnce) }, (_, i) =>
    positions.slice(i * marksAtOnce, (i + 1) * marksAtOnce),
  );

/** A mark is one byte, 0 to 3: the lower digit of its hexadecimal. A row without marks is good wherever it has a value. */
function packedMarks(positions: readonly number[]): string {
  const digits = positions.map(
    (position, i) => `greatest(ascii(substr(hex(quality), ${2 * position + 2}, 1)) - 48, 0) * ${4 ** i}`,
  );
  return `CASE WHEN quality IS NULL THEN -1 ELSE ${digits.join(' + ')} END::INTEGER`;
}

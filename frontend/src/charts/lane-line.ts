import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import type { Conversion } from '../text/shown-unit';
import { inUnit } from '../text/shown-unit';
import type { Cell } from './lane';
import { toColumns } from './to-columns';

interface Columns {
  readonly seconds: readonly number[];
  readonly min: readonly Cell[];
  readonly mean: readonly Cell[];
  readonly max: readonly Cell[];
}

/** A silence longer than this many usual distances between values is a gap. */
const gapDistances = 2.5;
/** As the alarm of a silent gateway has it, and longer than the store is behind the feed. */
const leastGapSeconds = 5;

interface Row {
  readonly at: number;
  /** Half of the time that it stands for: of a bucket; 0 of a single value. s */
  readonly half: number;
  readonly count: number;
  readonly min: number;
  readonly mean: number;
  readonly max: number;
}

function middle(values: readonly number[]): number | null {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? null;
}

/** How far apart single values usually are: where buckets hold several, a fraction of a bucket, so that one that is empty is seen. s */
function usualDistance(rows: readonly Row[], bucketSeconds: number): number {
  const between = middle(rows.slice(1).map(({ at }, index) => at - (rows[index]?.at ?? at))) ?? bucketSeconds;
  if (between > 1.5 * bucketSeconds) return between;
  return bucketSeconds / Math.max(1, middle(rows.map(({ count }) => count)) ?? 1);
}

/** About how long nothing was measured between two rows. s */
const silence = (before: Row, row: Row, usual: number): number => row.at - row.half - before.at - before.half + usual;

/**
 * History and what came live after it as one line. A sensor that is polled each few seconds leaves buckets empty
 * between its values: that is no gap. A silence longer than 2.5 of its usual distances, and than 5 s, is one, however long the buckets are.
 * @param of from the contract's unit of measure to the one shown
 */
export function laneLine(
  history: HistoryColumns,
  of: Conversion,
  live: readonly { readonly seconds: number; readonly value: number | null }[] = [],
): Columns {
  const read = toColumns(history, of);
  const half = history.bucketMs / 2000;
  const rows = read.seconds.flatMap((at, index): Row[] => {
    const mean = read.mean[index] ?? null;
    const count = history.count[index] ?? 0;
    return mean === null ? [] : [{ at, half, count, min: read.min[index] ?? mean, mean, max: read.max[index] ?? mean }];
  });
  /** The store is a second or two behind the feed: its newest buckets may still be empty. */
  const end = (rows.at(-1)?.at ?? -Infinity) + half;
  const tail = live.flatMap(({ seconds, value }): Row[] => {
    if (value === null || seconds <= end) return [];
    const own = inUnit(value, of);
    return [{ at: seconds, half: 0, count: 1, min: own, mean: own, max: own }];
  });
  const usual = usualDistance(rows, history.bucketMs / 1000);
  const all = [...rows, ...tail];
  const seconds: number[] = [];
  const min: Cell[] = [];
  const mean: Cell[] = [];
  const max: Cell[] = [];
  const put = (at: number, one: Cell, middle: Cell, other: Cell): void => {
    seconds.push(at);
    min.push(one);
    mean.push(middle);
    max.push(other);
  };
  all.forEach((row, index) => {
    const before = all[index - 1];
    if (before !== undefined && silence(before, row, usual) > Math.max(leastGapSeconds, gapDistances * usual))
      put((before.at + row.at) / 2, null, null, null);
    put(row.at, row.min, row.mean, row.max);
  });
  return { seconds, min, mean, max };
}

import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
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

/** Middle of the distances between neighbours; null of fewer than two. s */
function usualDistance(seconds: readonly number[]): number | null {
  const distances = seconds.slice(1).map((at, index) => at - (seconds[index] ?? at));
  const sorted = distances.sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? null;
}

/**
 * History and what came live after it as one line. A sensor that is polled each few seconds leaves buckets empty
 * between its values: that is no gap. A silence longer than 2.5 of its usual distances, and than 5 s, is one.
 * @param factor from the contract's unit of measure to the one shown
 */
export function laneLine(
  history: HistoryColumns,
  factor: number,
  live: readonly { readonly seconds: number; readonly value: number | null }[] = [],
): Columns {
  const read = toColumns(history, factor);
  const rows = read.seconds.flatMap((at, index) => {
    const mean = read.mean[index] ?? null;
    return mean === null ? [] : [{ at, min: read.min[index] ?? mean, mean, max: read.max[index] ?? mean }];
  });
  /** The store is a second or two behind the feed: its newest buckets may still be empty. */
  const end = (rows.at(-1)?.at ?? -Infinity) + history.bucketMs / 2000;
  const tail = live.flatMap(({ seconds, value }) =>
    value === null || seconds <= end
      ? []
      : [{ at: seconds, min: value * factor, mean: value * factor, max: value * factor }],
  );
  const usual = Math.max(usualDistance(rows.map(({ at }) => at)) ?? 0, history.bucketMs / 1000);
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
    if (before !== undefined && row.at - before.at > Math.max(leastGapSeconds, gapDistances * usual))
      put((before.at + row.at) / 2, null, null, null);
    put(row.at, row.min, row.mean, row.max);
  });
  return { seconds, min, mean, max };
}

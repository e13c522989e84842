import type { HistoryBuckets } from '../../ports/history-store';

export interface BucketFigures {
  readonly least: number | null;
  readonly mean: number | null;
  readonly most: number | null;
  readonly last: number | null;
  readonly lastAtMs: number | null;
  /** Begin of the bucket of the least. */
  readonly leastAtMs: number | null;
  /** Of the buckets that have values. */
  readonly share: number;
}

/** Least, mean by count, most and last of a period that was read in buckets; nothing is put into a gap. */
export function bucketFigures({ count, max, mean, min, startMs }: HistoryBuckets): BucketFigures {
  let [least, most, sum, all, measured, leastAt, last] = [Infinity, -Infinity, 0, 0, 0, -1, -1];
  for (let at = 0; at < count.length; at++) {
    const values = count[at] ?? 0;
    if (!(values > 0)) continue;
    measured += 1;
    all += values;
    sum += values * (mean[at] as number);
    most = Math.max(most, max[at] as number);
    if ((min[at] as number) < least) [least, leastAt] = [min[at] as number, at];
    last = at;
  }
  const share = count.length === 0 ? 0 : measured / count.length;
  if (last < 0) return { least: null, mean: null, most: null, last: null, lastAtMs: null, leastAtMs: null, share };
  return {
    ...{ least, most, mean: sum / all, last: mean[last] as number, share },
    lastAtMs: startMs[last] as number,
    leastAtMs: startMs[leastAt] as number,
  };
}

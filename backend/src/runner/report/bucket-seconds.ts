import type { HistoryBuckets, HistorySeconds } from '../../ports/history-store';

/** One column of seconds in the buckets in which history would give them. @param fromMs whole ms, as `toMs`, which is later; half-open */
export function bucketSeconds(
  seconds: Pick<HistorySeconds, 'count' | 'fromMs' | 'values'>,
  column: number,
  { buckets, fromMs, toMs }: { readonly fromMs: number; readonly toMs: number; readonly buckets: number },
): HistoryBuckets {
  const bucketMs = Math.ceil((toMs - fromMs) / buckets);
  const length = Math.ceil((toMs - fromMs) / bucketMs);
  const [min, max] = [new Float64Array(length).fill(Number.NaN), new Float64Array(length).fill(Number.NaN)];
  const [sum, count] = [new Float64Array(length), new Float64Array(length)];
  const values = seconds.values[column] ?? new Float64Array();
  for (let place = 0; place < seconds.count; place += 1) {
    const [atMs, value] = [seconds.fromMs + place * 1000, values[place] ?? Number.NaN];
    if (Number.isNaN(value) || atMs < fromMs || atMs >= toMs) continue;
    const at = Math.floor((atMs - fromMs) / bucketMs);
    // Of a bucket that has none yet a comparison is false.
    if (!((min[at] as number) <= value)) min[at] = value;
    if (!((max[at] as number) >= value)) max[at] = value;
    sum[at] = (sum[at] as number) + value;
    count[at] = (count[at] as number) + 1;
  }
  const startMs = Float64Array.from({ length }, (_, at) => fromMs + at * bucketMs);
  const mean = sum.map((one, at) => (count[at] === 0 ? Number.NaN : one / (count[at] as number)));
  return { bucketMs, resolution: 'second', startMs, min, mean, max, count };
}

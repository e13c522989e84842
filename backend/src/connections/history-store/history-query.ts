import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { HistoryQuery, SecondsQuery } from '../../ports/history-store';

export const secondMs = 1000;
export const minuteMs = 60 * secondMs;
export const hourMs = 60 * minuteMs;
export const dayMs = 24 * hourMs;

/** From this bucket width on, buckets are made of 1-minute figures. */
export const minutesFromBucketMs = 10 * minuteMs;

/**
 * How a query is cut, the same for every store. Bucket i covers [from + i·width, from + (i + 1)·width) ∩ [from, to),
 * width = ceil((to − from) / buckets) ms. Buckets of 10 minutes or more are made of 1-minute figures, whether the
 * seconds are still kept or not: a minute counts in the bucket in which it begins, its min and max as they were, its
 * mean weighted by its count. Narrower buckets are made of seconds where those are kept and of minutes before that.
 */
export interface BucketPlan {
  readonly fromMs: number;
  readonly toMs: number;
  readonly bucketMs: number;
  readonly count: number;
  readonly byMinute: boolean;
}

/** @throws CodedError HISTORY_QUERY_INVALID; whoever takes a query from outside checks it first */
export function bucketPlan(query: Pick<HistoryQuery, 'fromMs' | 'toMs' | 'buckets'>): BucketPlan {
  const { fromMs, toMs, buckets } = query;
  const valid = [fromMs, toMs, buckets].every(Number.isSafeInteger) && toMs > fromMs && buckets >= 1;
  if (!valid) {
    throw new CodedError(
      'HISTORY_QUERY_INVALID',
      'a query needs whole ms with from before to, and at least one bucket',
    );
  }
  const bucketMs = Math.ceil((toMs - fromMs) / buckets);
  const count = Math.ceil((toMs - fromMs) / bucketMs);
  return { fromMs, toMs, bucketMs, count, byMinute: bucketMs >= minutesFromBucketMs };
}

export interface SecondsPlan extends SecondsQuery {
  /** Seconds of the period. */
  readonly count: number;
}

/** @throws CodedError HISTORY_QUERY_INVALID */
export function secondsPlan(query: SecondsQuery): SecondsPlan {
  const { fromMs, toMs } = query;
  const isWhole = [fromMs, toMs].every((ms) => Number.isSafeInteger(ms) && ms % secondMs === 0);
  if (!isWhole || !(toMs > fromMs) || toMs - fromMs > dayMs) {
    throw new CodedError(
      'HISTORY_QUERY_INVALID',
      'seconds are read from whole second to whole second, from before to, at most a day at once',
    );
  }
  return { ...query, count: (toMs - fromMs) / secondMs };
}

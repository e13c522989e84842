import type { AlarmPerformance } from '@ebbline/shared/contract/alarm-performance';
import type { Failure, Result } from '@ebbline/shared/errors/result';

export interface PerformanceQuery {
  /** Null: 30 days before the end. */
  readonly fromMs: number | null;
  /** Null: now. */
  readonly toMs: number | null;
  /** Null: the whole site. */
  readonly hall: string | null;
}

/** How well the alarms served the operator, reckoned from the journal when asked. */
export interface PerformanceDesk {
  report(
    query: PerformanceQuery,
  ): Promise<Result<AlarmPerformance, Failure<'HALL_UNKNOWN' | 'QUERY_MALFORMED' | 'TOO_MANY_REQUESTS'>>>;
}

export const PERFORMANCE_DESK = Symbol('PerformanceDesk');

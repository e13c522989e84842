import type { AlarmSpans, PastUncertainty } from '@ebbline/shared/contract/trends';
import type { Failure, Result } from '@ebbline/shared/errors/result';

export interface SpansQuery {
  readonly units: readonly string[];
  /** Half-open [fromMs, toMs). */
  readonly fromMs: number;
  readonly toMs: number;
}

export interface UncertaintyQuery {
  readonly unit: string;
  readonly points: readonly string[];
  /** Half-open [fromMs, toMs). */
  readonly fromMs: number;
  readonly toMs: number;
  /** At most so many moments of the period. */
  readonly moments: number;
}

/** What is drawn beside the history of points. */
export interface TrendDesk {
  /** When which alarm of some units, or of the halls in which they stand, stood, by the journal. */
  alarmSpans(query: SpansQuery): Promise<Result<AlarmSpans, Failure<'UNIT_UNKNOWN' | 'TOO_MANY_REQUESTS'>>>;
  /** How sure past values were. Throws what the history store throws. */
  uncertainty(
    query: UncertaintyQuery,
  ): Promise<Result<PastUncertainty, Failure<'UNIT_UNKNOWN' | 'POINT_UNKNOWN' | 'UNCERTAINTY_BUSY'>>>;
}

export const TREND_DESK = Symbol('TrendDesk');

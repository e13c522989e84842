import type { Report } from '@ebbline/shared/contract/report';
import type { Failure, Result } from '@ebbline/shared/errors/result';

export interface ReportQuery {
  /** Null: the whole site. */
  readonly hall: string | null;
  /** Half-open [fromMs, toMs). */
  readonly fromMs: number;
  readonly toMs: number;
  /** Who asks; null: nobody is signed in. */
  readonly madeBy: string | null;
  /** Whether they may see what was done with people and access. */
  readonly mayReadAudit: boolean;
}

/** What one shift hands to the next, put together from journal and history when asked. */
export interface ReportDesk {
  /** Rejects where the history store does. */
  report(query: ReportQuery): Promise<Result<Report, Failure<'HALL_UNKNOWN' | 'REPORT_PERIOD' | 'TOO_MANY_REQUESTS'>>>;
}

export const REPORT_DESK = Symbol('ReportDesk');

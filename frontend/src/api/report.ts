import type { Report } from '@ebbline/shared/contract/report';
import { reportSchema } from '@ebbline/shared/contract/report';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** A week of a large hall is read from much history. ms */
const reportTimeOutMs = 60_000;

export interface ReportWish {
  /** ISO 8601, UTC; the period is half-open. */
  readonly from: string;
  readonly to: string;
  /** null: the whole site */
  readonly hall: string | null;
}

export function readReport({ from, to, hall }: ReportWish): Promise<Result<Report>> {
  const query = new URLSearchParams({ from, to, ...(hall === null ? {} : { hall }) });
  return request(`/api/report?${query.toString()}`, reportSchema, { timeOutMs: reportTimeOutMs });
}

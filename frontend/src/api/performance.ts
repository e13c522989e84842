import type { AlarmPerformance } from '@ebbline/shared/contract/alarm-performance';
import { alarmPerformanceSchema } from '@ebbline/shared/contract/alarm-performance';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** A year of a large site is a long journal. ms */
const performanceTimeOutMs = 30_000;

export interface PerformanceWish {
  /** ISO 8601, UTC; the period is half-open. */
  readonly from: string;
  readonly to: string;
  /** null: the whole site */
  readonly hall: string | null;
}

export function readPerformance({ from, to, hall }: PerformanceWish): Promise<Result<AlarmPerformance>> {
  const query = new URLSearchParams({ from, to, ...(hall === null ? {} : { hall }) });
  return request(`/api/alarms/performance?${query.toString()}`, alarmPerformanceSchema, {
    timeOutMs: performanceTimeOutMs,
  });
}

import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import { historyColumnsSchema } from '@ebbline/shared/contract/http-api';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

export interface HistoryWish {
  readonly unit: string;
  readonly point: string;
  /** ISO 8601, UTC; the period is half-open. */
  readonly from: string;
  readonly to: string;
  readonly buckets: number;
}

export function readHistory(wish: HistoryWish): Promise<Result<HistoryColumns>> {
  const query = new URLSearchParams({
    unit: wish.unit,
    point: wish.point,
    from: wish.from,
    to: wish.to,
    buckets: String(wish.buckets),
  });
  return request(`/api/history?${query.toString()}`, historyColumnsSchema);
}

import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import type { Result } from '@ebbline/shared/errors/result';
import type { Ref, ShallowRef } from 'vue';
import { onScopeDispose, ref, shallowReadonly, shallowRef, watch } from 'vue';
import type { HistoryWish } from '../api/history';
import { readHistory } from '../api/history';
import { problemText } from '../text/problem-text';

export interface TrendPeriod {
  readonly label: string;
  readonly ms: number;
  readonly buckets: number;
}

/** Buckets of 10 s, 1 min and 3 min: wide enough that a sensor polled each few seconds leaves none empty. */
export const trendPeriods: readonly [TrendPeriod, ...TrendPeriod[]] = [
  { label: 'last hour', ms: 3_600_000, buckets: 360 },
  { label: '6 h', ms: 21_600_000, buckets: 360 },
  { label: '24 h', ms: 86_400_000, buckets: 480 },
];

export interface TrendOptions {
  readonly unit: string;
  readonly point: string;
  /** Time in force as ISO 8601; null while it is not known. */
  readonly now: () => string | null;
  /** Default: the server. */
  readonly read?: (wish: HistoryWish) => Promise<Result<HistoryColumns>>;
}

/** How often the period is read anew; between, the newest value is drawn from the live feed. ms. */
const renewMs = 30_000;

/** History of one point over a chosen period, read again as time passes. Ends with its scope. */
export function useTrend(options: TrendOptions): {
  readonly columns: Readonly<ShallowRef<HistoryColumns | null>>;
  readonly problem: Readonly<Ref<string | null>>;
  readonly period: Ref<TrendPeriod>;
} {
  const read = options.read ?? readHistory;
  const columns = shallowRef<HistoryColumns | null>(null);
  const problem = ref<string | null>(null);
  const period = shallowRef<TrendPeriod>(trendPeriods[0]);
  let asked = 0;

  async function renew(): Promise<void> {
    const now = options.now();
    if (now === null) return;
    asked += 1;
    const mine = asked;
    const to = Date.parse(now) + 1000;
    const { unit, point } = options;
    const from = new Date(to - period.value.ms).toISOString();
    const reply = await read({ unit, point, from, to: new Date(to).toISOString(), buckets: period.value.buckets });
    if (mine !== asked) return;
    problem.value = reply.ok ? null : problemText(reply.fault.code, reply.fault.message);
    if (reply.ok) columns.value = reply.value;
  }

  watch(period, () => void renew(), { immediate: true });
  const timer = setInterval(() => void renew(), renewMs);
  onScopeDispose(() => clearInterval(timer));
  return { columns: shallowReadonly(columns), problem, period };
}

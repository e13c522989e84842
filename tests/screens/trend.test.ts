import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import type { Result } from '@ebbline/shared/errors/result';
import { fail, ok } from '@ebbline/shared/errors/result';
import { effectScope, nextTick } from 'vue';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { HistoryWish } from '../../frontend/src/api/history';
import { trendPeriods, useTrend } from '../../frontend/src/state/use-trend';

const columns: HistoryColumns = {
  unit: 'e7',
  point: 'loop.flow',
  unit_of_measure: 'm3/s',
  bucketMs: 10_000,
  resolution: 'second',
  start: [],
  min: [],
  mean: [],
  max: [],
  count: [],
};

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

describe('a trend', () => {
  it('asks for the last hour by the clock in force, again as time passes, and stops with its scope', async () => {
    const asked: HistoryWish[] = [];
    const scope = effectScope();
    const read = (wish: HistoryWish): Promise<Result<HistoryColumns>> => {
      asked.push(wish);
      return Promise.resolve(ok(columns));
    };
    const trend = scope.run(() =>
      useTrend({ unit: 'e7', point: 'loop.flow', now: () => '2026-03-01T12:00:00.000Z', read }),
    );
    await nextTick();
    expect(asked).toHaveLength(1);
    expect(asked[0]).toMatchObject({ from: '2026-03-01T11:00:01.000Z', to: '2026-03-01T12:00:01.000Z' });
    expect(trend?.columns.value).toEqual(columns);
    await vi.advanceTimersByTimeAsync(30_000);
    expect(asked).toHaveLength(2);
    scope.stop();
    await vi.advanceTimersByTimeAsync(120_000);
    expect(asked).toHaveLength(2);
  });

  it('shows the answer to the newest question, whichever comes last', async () => {
    const answers: ((reply: Result<HistoryColumns>) => void)[] = [];
    const scope = effectScope();
    const read = (): Promise<Result<HistoryColumns>> => new Promise((resolve) => answers.push(resolve));
    const trend = scope.run(() =>
      useTrend({ unit: 'e7', point: 'loop.flow', now: () => '2026-03-01T12:00:00.000Z', read }),
    );
    if (trend === undefined) throw new Error('the scope gave nothing back');
    trend.period.value = trendPeriods[2] ?? trendPeriods[0];
    await nextTick();
    answers[1]?.(ok({ ...columns, bucketMs: 180_000 }));
    answers[0]?.(ok(columns));
    await vi.advanceTimersByTimeAsync(0);
    expect(trend.columns.value?.bucketMs).toBe(180_000);
    scope.stop();
  });

  it('says what is wrong where the history can’t be read', async () => {
    const scope = effectScope();
    const read = (): Promise<Result<HistoryColumns>> =>
      Promise.resolve(fail({ code: 'X', message: 'the history is closed' }));
    const trend = scope.run(() =>
      useTrend({ unit: 'e7', point: 'loop.flow', now: () => '2026-03-01T12:00:00.000Z', read }),
    );
    await vi.advanceTimersByTimeAsync(0);
    expect(trend?.problem.value).toBe('the history is closed');
    scope.stop();
  });
});

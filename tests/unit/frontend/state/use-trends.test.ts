import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import { ok } from '@ebbline/shared/errors/result';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { EffectScope } from 'vue';
import { effectScope, nextTick, shallowReactive } from 'vue';
import type { HistoryWish } from '../../../../frontend/src/api/history';
import { useTrends } from '../../../../frontend/src/state/use-trends';

let scope: EffectScope;
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  scope = effectScope();
});
afterEach(() => {
  scope.stop();
  vi.useRealTimers();
});

const points = [{ unit: 'e7', point: 'heatRemoved' }];
const noColumns: Omit<HistoryColumns, 'unit' | 'point'> = {
  ...{ unit_of_measure: 'W', bucketMs: 1000, resolution: 'second' },
  ...{ start: [], min: [], mean: [], max: [], count: [] },
};

async function read(following: boolean) {
  const asked: HistoryWish[] = [];
  const now = shallowReactive({ shift: 0, span: { fromMs: 0, toMs: 3_600_000 } });
  const held = scope.run(() =>
    useTrends({
      points: () => points,
      subject: () => now.shift,
      span: () => now.span,
      following: () => following,
      read(wish) {
        asked.push(wish);
        return Promise.resolve(ok({ ...noColumns, unit: wish.unit, point: wish.point }));
      },
    }),
  );
  await vi.advanceTimersByTimeAsync(200);
  return { asked, now, held: () => held?.value };
}

describe('the history of points over a span', () => {
  it('is not asked for anew with each second of a span that follows the time', async () => {
    const { asked, now } = await read(true);
    for (let second = 1; second <= 5; second += 1) {
      now.span = { fromMs: second * 1000, toMs: 3_600_000 + second * 1000 };
      await vi.advanceTimersByTimeAsync(1000);
    }
    expect(asked).toHaveLength(1);
  });

  it('stays while another span is read, and goes at once where it would be drawn at another time', async () => {
    const { held, now } = await read(false);
    now.span = { fromMs: 3_600_000, toMs: 7_200_000 };
    await nextTick();
    expect(held()?.columns.size).toBe(1);
    now.shift = 86_400;
    await nextTick();
    expect(held()?.columns.size).toBe(0);
    await vi.advanceTimersByTimeAsync(200);
    expect(held()?.columns.size).toBe(1);
  });
});

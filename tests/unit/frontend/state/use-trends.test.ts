import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import { fail, ok } from '@ebbline/shared/errors/result';
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

interface How {
  readonly following?: boolean;
  /** Numbers of the questions that are refused. */
  readonly refused?: readonly number[];
  /** The time in force, where there is one. */
  readonly clock?: { ms: number };
  /** What an answer waits for. */
  readonly before?: (question: number) => Promise<void>;
}

async function read({ following = false, refused = [], clock, before }: How = {}) {
  const asked: HistoryWish[] = [];
  const now = shallowReactive({ shift: 0, span: { fromMs: 0, toMs: 3_600_000 } });
  const held = scope.run(() =>
    useTrends({
      points: () => points,
      subject: () => now.shift,
      span: () => now.span,
      following: () => following,
      ...(clock === undefined ? {} : { nowMs: () => clock.ms }),
      async read(wish) {
        asked.push(wish);
        const question = asked.length;
        await before?.(question);
        if (refused.includes(question)) return fail({ code: 'READING_TIMED_OUT', message: '' });
        return ok({ ...noColumns, unit: wish.unit, point: wish.point });
      },
    }),
  );
  await vi.advanceTimersByTimeAsync(200);
  return { asked, now, held: () => held?.value };
}

describe('the history of points over a span', () => {
  it('is not asked for anew with each second of a span that follows the time', async () => {
    const { asked, now } = await read({ following: true });
    for (let second = 1; second <= 5; second += 1) {
      now.span = { fromMs: second * 1000, toMs: 3_600_000 + second * 1000 };
      await vi.advanceTimersByTimeAsync(1000);
    }
    expect(asked).toHaveLength(1);
  });

  it('stays while another span is read, and goes at once where it would be drawn at another time', async () => {
    const { held, now } = await read();
    now.span = { fromMs: 3_600_000, toMs: 7_200_000 };
    await nextTick();
    expect(held()?.columns.size).toBe(1);
    now.shift = 86_400;
    await nextTick();
    expect(held()?.columns.size).toBe(0);
    await vi.advanceTimersByTimeAsync(200);
    expect(held()?.columns.size).toBe(1);
  });

  it('says that it is of another span until that was read, and takes no late answer for it', async () => {
    let answer = (): void => undefined;
    const first = new Promise<void>((done) => (answer = done));
    const { held, now } = await read({ before: (question) => (question === 1 ? first : Promise.resolve()) });
    now.span = { fromMs: 3_600_000, toMs: 7_200_000 };
    await nextTick();
    answer();
    await vi.advanceTimersByTimeAsync(0);
    expect([held()?.isOfOther, held()?.columns.size]).toEqual([true, 0]);
    await vi.advanceTimersByTimeAsync(200);
    expect(held()?.isOfOther).toBe(false);
  });

  it('of a span that is not over is read anew until all of it is on record', async () => {
    const clock = { ms: 1_800_000 };
    const { asked } = await read({ clock });
    await vi.advanceTimersByTimeAsync(18_000);
    expect(asked).toHaveLength(2);
    clock.ms = 3_600_000;
    await vi.advanceTimersByTimeAsync(18_000);
    expect(asked).toHaveLength(3);
    clock.ms = 3_720_000;
    await vi.advanceTimersByTimeAsync(18_000);
    expect(asked).toHaveLength(4);
    await vi.advanceTimersByTimeAsync(180_000);
    expect(asked).toHaveLength(4);
  });

  it('is asked for again where it could not be read, of a span that stands still too', async () => {
    const { asked, held } = await read({ refused: [1] });
    expect(held()?.problems.size).toBe(1);
    await vi.advanceTimersByTimeAsync(18_000);
    expect([held()?.problems.size, held()?.columns.size]).toEqual([0, 1]);
    await vi.advanceTimersByTimeAsync(180_000);
    expect(asked).toHaveLength(2);
  });
});

import { ok } from '@ebbline/shared/errors/result';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { EffectScope } from 'vue';
import { effectScope, nextTick, shallowReactive } from 'vue';
import { useOverSpan } from '../../../../frontend/src/state/use-over-span';

let scope: EffectScope;
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  scope = effectScope();
});
afterEach(() => {
  scope.stop();
  vi.useRealTimers();
});

interface Asked {
  wish: string;
  subject: string;
  span: { fromMs: number; toMs: number };
  following: boolean;
  nowMs: number;
}

/** Answers with what was wished for, at once, or when it is told to. */
async function holding(
  asked: Partial<Asked> = {},
  answer: (wish: string) => Promise<string> = (wish) => Promise.resolve(wish),
) {
  const now = shallowReactive<Asked>({
    ...{ wish: 'e7', subject: 'e7', span: { fromMs: 0, toMs: 3_600_000 }, following: false, nowMs: 7_200_000 },
    ...asked,
  });
  const reads: string[] = [];
  const held = scope.run(() =>
    useOverSpan({
      wish: () => now.wish,
      subject: () => now.subject,
      span: () => now.span,
      following: () => now.following,
      nowMs: () => now.nowMs,
      async read(span) {
        reads.push(span.from);
        return ok(await answer(now.wish));
      },
    }),
  );
  await vi.advanceTimersByTimeAsync(200);
  return { now, held: () => held?.value, reads };
}

describe('something over a span of time', () => {
  it('of another thing is not held in its place while that is being read', async () => {
    const { held, now } = await holding();
    expect(held()).toMatchObject({ found: 'e7', isOfOther: false });
    [now.wish, now.subject] = ['e1', 'e1'];
    await nextTick();
    expect(held()?.found).toBeNull();
    await vi.advanceTimersByTimeAsync(200);
    expect(held()).toMatchObject({ found: 'e1', isOfOther: false });
  });

  it('of another time stays until it was read anew, and says that it is of another', async () => {
    const { held, now } = await holding();
    now.span = { fromMs: 3_600_000, toMs: 7_200_000 };
    await nextTick();
    expect(held()).toMatchObject({ found: 'e7', isOfOther: true });
    await vi.advanceTimersByTimeAsync(200);
    expect(held()?.isOfOther).toBe(false);
  });

  it('is not taken for that of the time asked for now where it comes late', async () => {
    const answers: (() => void)[] = [];
    const { held, now } = await holding({}, (wish) => new Promise((done) => answers.push(() => done(wish))));
    now.span = { fromMs: 3_600_000, toMs: 7_200_000 };
    await nextTick();
    answers[0]?.();
    await vi.advanceTimersByTimeAsync(0);
    expect(held()?.found).toBeNull();
    await vi.advanceTimersByTimeAsync(200);
    answers[1]?.();
    await vi.advanceTimersByTimeAsync(0);
    expect(held()).toMatchObject({ found: 'e7', isOfOther: false, busy: false });
  });

  it('is not asked for anew with each second of a span that follows the time', async () => {
    const { now, reads } = await holding({ following: true });
    for (let second = 1; second <= 5; second += 1) {
      now.span = { fromMs: second * 1000, toMs: 3_600_000 + second * 1000 };
      await vi.advanceTimersByTimeAsync(1000);
    }
    expect(reads).toEqual(['1970-01-01T00:00:00.000Z']);
  });

  it('that is only read anew, as time goes by or as more stands, is not of another', async () => {
    const { held, now } = await holding({ following: true });
    now.wish = 'e7 2 stand';
    now.span = { fromMs: 1000, toMs: 3_601_000 };
    await nextTick();
    expect(held()).toMatchObject({ found: 'e7', isOfOther: false });
    await vi.advanceTimersByTimeAsync(200);
    expect(held()).toMatchObject({ found: 'e7 2 stand', isOfOther: false });
  });

  it('is read anew while the span is not over, and no more once all of it is on record', async () => {
    const { now, reads } = await holding({ nowMs: 3_000_000 });
    expect(reads).toHaveLength(1);
    now.nowMs = 3_800_000;
    await vi.advanceTimersByTimeAsync(60_000);
    const asLast = reads.length;
    expect(asLast).toBeGreaterThan(1);
    await vi.advanceTimersByTimeAsync(600_000);
    expect(reads).toHaveLength(asLast);
  });
});

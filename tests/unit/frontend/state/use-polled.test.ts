import { ok } from '@ebbline/shared/errors/result';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { effectScope, nextTick, ref } from 'vue';
import { usePolled } from '../../../../frontend/src/state/use-polled';

let scope = effectScope();
afterEach(() => {
  scope.stop();
  scope = effectScope();
  vi.useRealTimers();
});

describe('what is asked for again and again', () => {
  it('holds no answer to a question that is asked no more', async () => {
    const about = ref<string | null>('flow');
    let answer: (text: string) => void = () => undefined;
    const read = vi.fn(() => new Promise<ReturnType<typeof ok<string>>>((done) => (answer = (text) => done(ok(text)))));
    const polled = scope.run(() => usePolled(read, { of: () => about.value, everyMs: 60_000 }));
    expect(read).toHaveBeenCalledWith('flow');
    about.value = null;
    await nextTick();
    answer('alarms of flow');
    await nextTick();
    expect(polled?.value.value).toBeNull();
  });

  it('waits for an answer that takes longer than the interval, in place of asking over it for ever', async () => {
    vi.useFakeTimers();
    const read = vi.fn(() => new Promise<ReturnType<typeof ok<string>>>((done) => setTimeout(done, 2500, ok('late'))));
    const polled = scope.run(() => usePolled(read, { everyMs: 1000 }));
    await vi.advanceTimersByTimeAsync(2400);
    expect(read).toHaveBeenCalledTimes(1);
    await vi.advanceTimersByTimeAsync(200);
    expect(polled?.value.value).toBe('late');
    await vi.advanceTimersByTimeAsync(500);
    expect(read).toHaveBeenCalledTimes(2);
    // Whoever asks by hand is not kept waiting by one that is under way.
    void polled?.renew();
    expect(read).toHaveBeenCalledTimes(3);
  });
});

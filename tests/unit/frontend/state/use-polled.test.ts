import { ok } from '@ebbline/shared/errors/result';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { effectScope, nextTick, ref } from 'vue';
import { usePolled } from '../../../../frontend/src/state/use-polled';

const scope = effectScope();
afterEach(() => scope.stop());

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
});

import type { LimitLine } from '@ebbline/shared/contract/setup';
import { fail, ok } from '@ebbline/shared/errors/result';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { effectScope } from 'vue';
import { useLimits } from '../../../../frontend/src/state/use-limits';

let scope = effectScope();
beforeEach(() => vi.useFakeTimers());
afterEach(() => {
  scope.stop();
  scope = effectScope();
  vi.useRealTimers();
});

const lineAt = (limit: number) => [{ limit } as LimitLine];

describe('the limits that are drawn beside values', () => {
  it('follow a change within a minute, and stay as they were where they can’t be read', async () => {
    const read = vi.fn(() => Promise.resolve(ok<readonly LimitLine[]>(lineAt(1))));
    const limits = scope.run(() => useLimits(() => ['e7'], read));
    await vi.advanceTimersByTimeAsync(0);
    expect(limits?.value.get('e7')).toEqual(lineAt(1));
    read.mockResolvedValue(ok(lineAt(2)));
    await vi.advanceTimersByTimeAsync(60_000);
    expect(limits?.value.get('e7')).toEqual(lineAt(2));
    read.mockResolvedValue(fail({ code: 'SERVER_UNREACHABLE', message: 'no way' }) as never);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(limits?.value.get('e7')).toEqual(lineAt(2));
  });

  it('are asked for again where the first answer failed, and no more once nobody looks', async () => {
    const read = vi.fn(() => Promise.resolve(fail({ code: 'SERVER_UNREACHABLE', message: 'no way' }) as never));
    const limits = scope.run(() => useLimits(() => ['e7'], read));
    await vi.advanceTimersByTimeAsync(0);
    expect(limits?.value.has('e7')).toBe(false);
    read.mockResolvedValue(ok(lineAt(3)) as never);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(limits?.value.get('e7')).toEqual(lineAt(3));
    scope.stop();
    await vi.advanceTimersByTimeAsync(600_000);
    expect(read).toHaveBeenCalledTimes(2);
  });
});

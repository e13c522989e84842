import { ok } from '@ebbline/shared/errors/result';
import { describe, expect, it } from 'vitest';
import { FewAtOnce } from '../../../../../backend/src/runner/past/few-at-once';

describe('what is asked of the past', () => {
  it('is done two at a time, sixteen more wait in order, and others are refused until there is room', async () => {
    const few = new FewAtOnce();
    const ends: (() => void)[] = [];
    const begun: number[] = [];
    const ask = (n: number) =>
      few.run(async () => {
        begun.push(n);
        await new Promise<void>((resolve) => ends.push(resolve));
        return ok(n);
      });
    const asked = Array.from({ length: 18 }, (_, n) => ask(n));
    expect(await ask(18)).toMatchObject({ ok: false, fault: { code: 'TOO_MANY_REQUESTS' } });
    expect(begun).toEqual([0, 1]);
    for (let n = 0; n < 18; n += 1) {
      ends[n]?.();
      await asked[n];
      expect(begun.length).toBe(Math.min(18, n + 3));
    }
    expect(begun).toEqual(Array.from({ length: 18 }, (_, n) => n));
    const last = ask(19);
    ends.at(-1)?.();
    expect(await last).toEqual(ok(19));
  });

  it('leaves its place where it fails', async () => {
    const few = new FewAtOnce();
    for (let i = 0; i < 40; i += 1)
      await expect(few.run(() => Promise.reject(new Error('the store is away')))).rejects.toThrow('away');
    expect(await few.run(() => Promise.resolve(ok(1)))).toEqual(ok(1));
  });
});

import type { LimitLine } from '@ebbline/shared/contract/setup';
import type { Result } from '@ebbline/shared/errors/result';
import type { ShallowRef } from 'vue';
import { onScopeDispose, shallowReadonly, shallowRef, watch } from 'vue';
import { readLimits } from '../api/setup';

/** A screen stays open all night, and a limit is changed meanwhile. ms */
const everyMs = 60_000;

/**
 * Limits of some units, asked for once a minute. A unit whose limits can't be read has none here, or those of before: they
 * are drawn beside values and never stand for them. Ends with its scope.
 */
export function useLimits(
  units: () => readonly string[],
  read: (unit: string) => Promise<Result<readonly LimitLine[]>> = readLimits,
): Readonly<ShallowRef<ReadonlyMap<string, readonly LimitLine[]>>> {
  const limits = shallowRef<ReadonlyMap<string, readonly LimitLine[]>>(new Map());
  const asking = new Set<string>();
  async function ask(unit: string): Promise<void> {
    if (asking.has(unit)) return;
    asking.add(unit);
    const reply = await read(unit);
    asking.delete(unit);
    if (reply.ok) limits.value = new Map(limits.value).set(unit, reply.value);
  }
  watch(units, (wanted) => wanted.filter((unit) => !limits.value.has(unit)).forEach((unit) => void ask(unit)), {
    immediate: true,
  });
  const timer = setInterval(() => new Set(units()).forEach((unit) => void ask(unit)), everyMs);
  onScopeDispose(() => clearInterval(timer));
  return shallowReadonly(limits);
}

import type { LimitLine } from '@ebbline/shared/contract/setup';
import type { Result } from '@ebbline/shared/errors/result';
import type { ShallowRef } from 'vue';
import { shallowReadonly, shallowRef, watch } from 'vue';
import { readLimits } from '../api/setup';

/**
 * Limits of some units, each asked for once. A unit whose limits can't be read has none here: they are drawn
 * beside values and never stand for them.
 */
export function useLimits(
  units: () => readonly string[],
  read: (unit: string) => Promise<Result<readonly LimitLine[]>> = readLimits,
): Readonly<ShallowRef<ReadonlyMap<string, readonly LimitLine[]>>> {
  const limits = shallowRef<ReadonlyMap<string, readonly LimitLine[]>>(new Map());
  const asked = new Set<string>();
  async function ask(unit: string): Promise<void> {
    asked.add(unit);
    const reply = await read(unit);
    if (reply.ok) limits.value = new Map(limits.value).set(unit, reply.value);
    else asked.delete(unit);
  }
  watch(units, (wanted) => wanted.filter((unit) => !asked.has(unit)).forEach((unit) => void ask(unit)), {
    immediate: true,
  });
  return shallowReadonly(limits);
}

import { isAbsent } from '@ebbline/shared/contract/is-absent';
import type { PointList } from '@ebbline/shared/contract/http-api';
import type { Result } from '@ebbline/shared/errors/result';
import type { ShallowRef } from 'vue';
import { shallowReadonly, shallowRef, watch } from 'vue';
import { readPoints } from '../api/points';

/** Ids of the points that a unit has something to say of, asked for once; undefined until they are known. */
export function useUnitPoints(
  units: () => readonly string[],
  read: (unit: string) => Promise<Result<PointList>> = readPoints,
): Readonly<ShallowRef<ReadonlyMap<string, readonly string[]>>> {
  const known = shallowRef<ReadonlyMap<string, readonly string[]>>(new Map());
  const asked = new Set<string>();
  async function ask(unit: string): Promise<void> {
    asked.add(unit);
    const reply = await read(unit);
    if (reply.ok)
      known.value = new Map(known.value).set(
        unit,
        reply.value.points.filter((point) => !isAbsent(point)).map(({ id }) => id),
      );
    else asked.delete(unit);
  }
  watch(units, (wanted) => wanted.filter((unit) => !asked.has(unit)).forEach((unit) => void ask(unit)), {
    immediate: true,
  });
  return shallowReadonly(known);
}

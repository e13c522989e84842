import type { LoopLine } from '@ebbline/shared/contract/live-feed';

/** The loop whose vacuum source has the least left; null where none is known. */
export function smallestReserve(loops: readonly LoopLine[]): LoopLine | null {
  return loops.reduce<LoopLine | null>((least, line) => {
    const reserve = line.vacuumReserve.value;
    if (reserve === null) return least;
    return least === null || reserve < (least.vacuumReserve.value ?? Infinity) ? line : least;
  }, null);
}

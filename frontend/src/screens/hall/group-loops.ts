import type { Site } from '@ebbline/shared/contract/http-api';
import type { LoopLine } from '@ebbline/shared/contract/live-feed';

/** The units of one water path, as they are shown together. */
export interface LoopGroup {
  readonly id: string;
  /** Null where a unit has its loop for itself: its own name says all. */
  readonly title: string | null;
  readonly lines: readonly LoopLine[];
}

/** Units that share a loop stand together, at the place of the first of them; all else keeps its order. */
export function groupLoops(lines: readonly LoopLine[], loops: Site['loops']): readonly LoopGroup[] {
  const groups = new Map<string, LoopLine[]>();
  const loopOf = (unit: string): Site['loops'][number] | undefined => loops.find(({ units }) => units.includes(unit));
  for (const line of lines) {
    const id = loopOf(line.unit)?.id ?? `unit ${line.unit}`;
    groups.set(id, [...(groups.get(id) ?? []), line]);
  }
  return [...groups].map(([id, together]) => {
    const loop = loops.find((one) => one.id === id);
    const title =
      loop === undefined || loop.units.length < 2
        ? null
        : `${loop.name}: ${loop.units.length} units on one loop, ${loop.unitsNeeded} needed`;
    return { id, title, lines: together };
  });
}

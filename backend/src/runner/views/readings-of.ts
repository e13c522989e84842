import type { Reading } from '@ebbline/shared/contract/reading';
import type { ShownPipeline } from './scene';
import { unitAt } from './to-loop-line';
import { toReading } from './to-reading';

/** Every point of a unit, and those of the hall it stands in. */
export function readingsOf(pipeline: ShownPipeline, unit: number, nowMs: number): Reading[] {
  const { holder, hall } = unitAt(pipeline, unit);
  return [holder, pipeline.site.halls[hall]?.holder ?? -1].flatMap((index) => {
    const { firstSlot, slotCount } = pipeline.site.holders[index] ?? { firstSlot: 0, slotCount: 0 };
    return Array.from({ length: slotCount }, (_, i) => toReading(pipeline, firstSlot + i, nowMs));
  });
}

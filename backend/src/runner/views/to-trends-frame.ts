import type { TrendPoint, TrendsFrame } from '@ebbline/shared/contract/live-feed';
import { frameBase } from './frame-base';
import type { Scene } from './scene';
import { toReading } from './to-reading';

/** Where a point is kept: index of its holder, and its slot. */
export interface PointFound {
  readonly holder: number;
  readonly slot: number;
}

/** The newest reading of each point that a trend follows, in the order asked for. */
export function toTrendsFrame(
  scene: Scene,
  points: readonly TrendPoint[],
  find: (unit: string, point: string) => PointFound | null,
): Omit<TrendsFrame, 'sequence'> {
  const readings = points.flatMap(({ unit, point }) => {
    const found = find(unit, point);
    return found === null ? [] : [{ unit, reading: toReading(scene.pipeline, found.slot, scene.nowMs()) }];
  });
  return { screen: 'trends', readings, ...frameBase(scene) };
}

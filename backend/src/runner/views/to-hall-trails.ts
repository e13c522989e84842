import type { HallTrails } from '@ebbline/shared/contract/hall-trails';
import type { CompiledHall } from '../../evaluation/site/compiled-site';
import type { Scene } from './scene';
import { timeText } from './time-text';
import { unitAt } from './to-loop-line';

const minuteMs = 60_000;

/** The last hour of every loop of a hall, minute by minute. */
export function toHallTrails({ pipeline, nowMs }: Pick<Scene, 'pipeline' | 'nowMs'>, hall: CompiledHall): HallTrails {
  const now = nowMs();
  return {
    hall: hall.id,
    minute: timeText(Math.floor(now / minuteMs) * minuteMs),
    trails: hall.units.map((unit) => {
      const { lowestPa, highestPa } = pipeline.hourTrail(unit, now);
      return { unit: unitAt(pipeline, unit).id, lowestPa: [...lowestPa], highestPa: [...highestPa] };
    }),
  };
}

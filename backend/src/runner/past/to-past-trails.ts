import type { HallTrails } from '@ebbline/shared/contract/hall-trails';
import type { HourTrail } from '../../evaluation/pipeline/hour-extremes';
import type { CompiledHall, CompiledSite } from '../../evaluation/site/compiled-site';
import { timeText } from '../views/time-text';

const minuteMs = 60_000;

/** The hour of every loop of a hall up to a past second, as the live one is told: Pa in whole numbers. */
export const toPastTrails = (
  site: CompiledSite,
  hall: CompiledHall,
  hours: ReadonlyMap<number, HourTrail>,
  atMs: number,
): HallTrails => ({
  hall: hall.id,
  minute: timeText(Math.floor(atMs / minuteMs) * minuteMs),
  trails: [...hours].map(([unit, { lowestPa, highestPa }]) => ({
    unit: site.units[unit]?.id ?? '',
    lowestPa: lowestPa.map(whole),
    highestPa: highestPa.map(whole),
  })),
});

const whole = (pa: number | null): number | null => (pa === null ? null : Math.round(pa));

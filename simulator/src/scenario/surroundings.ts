import type { RandomSource } from '../sensors/random-source';
import type { HallId } from './demo-fleet';
import type { Weather } from './weather';

const hour = 3600;
const day = 24 * hour;

/** Weather and building of one hall. */
export interface Surroundings {
  readonly ambientPa: number;
  readonly hallC: number;
  /** Relative humidity, 1. */
  readonly humidity: number;
  readonly facilitySupplyC: number;
}

/** One sky over both halls, and each hall's own air: phases drawn once. */
export interface SitePhases {
  readonly weather: Weather;
  readonly hall: Readonly<Record<HallId, number>>;
}

export function drawSitePhases(weather: Weather, source: RandomSource): SitePhases {
  const draw = (): number => 2 * Math.PI * source.uniform();
  return { weather, hall: { north: draw(), south: draw() } };
}

/** At a time in s since 1970; `lowPa`: a low that a command brought over the site, Pa below the walk's own pressure. */
export function surroundingsAt(hall: HallId, phases: SitePhases, epochS: number, lowPa = 0): Surroundings {
  const phase = phases.hall[hall];
  const wave = (size: number, periodS: number): number => size * Math.sin((2 * Math.PI * epochS) / periodS + phase);
  const north = hall === 'north';
  return {
    ambientPa: phases.weather.ambientPa(epochS) - lowPa,
    hallC: (north ? 26.6 : 25.4) + wave(0.6, day) + wave(0.2, 37 * 60),
    humidity: (north ? 0.43 : 0.46) + wave(0.03, 17 * hour),
    facilitySupplyC: (north ? 29.8 : 29.5) + wave(0.5, day) + wave(0.08, 23 * 60),
  };
}

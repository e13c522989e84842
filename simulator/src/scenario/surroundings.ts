import type { RandomSource } from '../sensors/random-source';
import type { HallId } from './demo-fleet';

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

/** Barometer waves that together vary by 0.72 kPa (deviation), slower than 0.36 kPa/h; a year of station data varies by 0.74. */
const barometerWaves: readonly (readonly [pa: number, periodS: number])[] = [
  [950, 5.3 * day],
  [350, 1.9 * day],
  [120, 12 * hour],
];

/** Phases drawn once: both halls lie under one sky. */
export interface WeatherPhases {
  readonly barometer: readonly number[];
  readonly hall: Readonly<Record<HallId, number>>;
}

export function drawWeatherPhases(source: RandomSource): WeatherPhases {
  const draw = (): number => 2 * Math.PI * source.uniform();
  return { barometer: barometerWaves.map(draw), hall: { north: draw(), south: draw() } };
}

export function surroundingsAt(hall: HallId, phases: WeatherPhases, epochS: number): Surroundings {
  const wave = (size: number, periodS: number, phase: number): number =>
    size * Math.sin((2 * Math.PI * epochS) / periodS + phase);
  let ambientPa = 100950;
  barometerWaves.forEach(([pa, periodS], i) => {
    ambientPa += wave(pa, periodS, phases.barometer[i] ?? 0);
  });
  const phase = phases.hall[hall];
  const north = hall === 'north';
  return {
    ambientPa,
    hallC: (north ? 26.6 : 25.4) + wave(0.6, day, phase) + wave(0.2, 37 * 60, phase),
    humidity: (north ? 0.43 : 0.46) + wave(0.03, 17 * hour, phase),
    facilitySupplyC: (north ? 29.8 : 29.5) + wave(0.5, day, phase) + wave(0.08, 23 * 60, phase),
  };
}

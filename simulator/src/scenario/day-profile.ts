import type { RandomSource } from '../sensors/random-source';

const minute = 60;
const hour = 60 * minute;
const day = 24 * hour;

/** Waves of work on top of the mean: share of rated power, period in s. Invented, not measured. */
const unitWaves: readonly (readonly [share: number, periodS: number])[] = [
  [0.03, 47 * minute],
  [0.015, 11 * minute],
];
const rackWaves: readonly (readonly [share: number, periodS: number])[] = [
  [0.03, 3.1 * hour],
  [0.012, 19 * minute],
];
const dayShare = 0.07;
/** Busiest at this time of day, UTC. */
const busiestS = 15 * hour;

/** Phases of one unit's work, drawn once. */
export interface LoadPhases {
  readonly unit: readonly number[];
  readonly racks: readonly (readonly number[])[];
}

export function drawLoadPhases(racks: number, source: RandomSource): LoadPhases {
  const draw = (): number => 2 * Math.PI * source.uniform();
  return {
    unit: unitWaves.map(draw),
    racks: Array.from({ length: racks }, () => rackWaves.map(draw)),
  };
}

/** Chip power of a rack as a share of rated at a time (s since 1970): a smooth function, so that any speed sees the same day. */
export function loadShareAt(meanLoad: number, phases: LoadPhases, rack: number, epochS: number): number {
  const timeOfDay = (epochS - busiestS) / day;
  let share = meanLoad + dayShare * Math.cos(2 * Math.PI * timeOfDay);
  unitWaves.forEach(([size, periodS], i) => {
    share += size * Math.sin((2 * Math.PI * epochS) / periodS + (phases.unit[i] ?? 0));
  });
  rackWaves.forEach(([size, periodS], i) => {
    share += size * Math.sin((2 * Math.PI * epochS) / periodS + (phases.racks[rack]?.[i] ?? 0));
  });
  return Math.max(0, share);
}

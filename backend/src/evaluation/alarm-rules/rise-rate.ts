import { SecondRings } from './second-rings';

/** Ticks (one a second) between the two ends of a rise: at least, and at most. */
const shortestTicks = 20;
const longestTicks = 180;
/** Each end is a mean of so many ticks. */
const endTicks = 3;
/** So many samples of a slow source make a rise. */
const periods = 3;
/** A source that counts in whole steps is looked at for so many seconds a kelvin of step: one step alone is then 1 K/min. */
const secondsPerKelvin = 60;
/** Less is rounding of the arithmetic, no step of the source: K. */
const rounding = 1e-6;

/** The last minutes of one temperature of every unit, and how coarsely its source counts. Written in place. */
export interface RiseMemory {
  readonly rings: SecondRings;
  /** The two newest steps that it took, K; NaN before them. */
  readonly stepK: Float64Array;
  readonly stepBeforeK: Float64Array;
}

export const createRiseMemory = (units: number): RiseMemory => ({
  rings: new SecondRings(units, longestTicks + endTicks),
  stepK: new Float64Array(units).fill(Number.NaN),
  stepBeforeK: new Float64Array(units).fill(Number.NaN),
});

/** Once a second. */
export function followRise({ rings, stepK, stepBeforeK }: RiseMemory, unit: number, temperatureC: number): void {
  const step = Math.abs(temperatureC - rings.at(unit, 0));
  if (step > rounding) {
    stepBeforeK[unit] = stepK[unit] as number;
    stepK[unit] = step;
  }
  rings.push(unit, temperatureC);
}

/** After a gap in time nothing before it is comparable. */
export const forgetRise = ({ rings }: RiseMemory, unit: number): void => rings.forget(unit, 1);

/**
 * Mean rate of rise, K/s, over twenty seconds, or as much longer as the source is slow (three of its periods) or coarse (a minute
 * for each kelvin of its step): one step of a whole-degree source, or one late sample, is no rise. NaN until so much is
 * known, and for a source that tells less often than once a minute.
 */
export function riseRate({ rings, stepK, stepBeforeK }: RiseMemory, unit: number, periodMs: number): number {
  const slow = Math.ceil((periods * periodMs) / 1000);
  if (slow > longestTicks) return Number.NaN;
  // A fine source that jumps once is not coarse: both of its steps are large only where it knows no smaller ones.
  const newest = stepK[unit] as number;
  const before = stepBeforeK[unit] as number;
  const step = Number.isNaN(before) ? newest : Math.min(newest, before);
  const coarse = Number.isNaN(step) ? 0 : Math.ceil(step * secondsPerKelvin);
  const ticks = Math.min(longestTicks, Math.max(shortestTicks, slow, coarse));
  return (rings.mean(unit, 0, endTicks - 1) - rings.mean(unit, ticks, ticks + endTicks - 1)) / ticks;
}

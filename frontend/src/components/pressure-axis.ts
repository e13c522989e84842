import { pressureStep } from '../text/display-unit';

/** The absolute-pressure axis that all strips of a hall share. x in CSS pixels from the left edge of a strip. */
export interface PressureAxis {
  readonly minPa: number;
  readonly maxPa: number;
  readonly x0: number;
  readonly x1: number;
}

const stepPa = 10_000;
/** Room for the bank of room air, and for a bar that has crossed it. Pa. */
const bankPa = 6_000;

/** Pa absolute → px; linear, not clamped. */
export function toX(axis: PressureAxis, pa: number): number {
  return axis.x0 + ((pa - axis.minPa) / (axis.maxPa - axis.minPa)) * (axis.x1 - axis.x0);
}

/**
 * From vacuum to a little above the highest pressure anywhere, in whole steps of 10 kPa, so that the axis
 * does not move with every sample.
 * @param pressuresPa ambient and highest wetted pressures of the hall, Pa absolute; unknown ones as null
 * @param width of a strip, px
 */
export function pressureAxis(pressuresPa: readonly (number | null)[], width: number): PressureAxis {
  const known = pressuresPa.filter((pa): pa is number => pa !== null);
  const highest = known.length === 0 ? 101_325 : Math.max(...known);
  return { minPa: 0, maxPa: Math.ceil((highest + bankPa) / stepPa) * stepPa, x0: 0, x1: width };
}

/** Where the axis is labelled, Pa; fewer on a narrow strip. The last label leaves room for the unit. */
export function axisTicks(axis: PressureAxis): readonly number[] {
  const step = pressureStep() * (axis.x1 - axis.x0 < 300 ? 2 : 1);
  const ticks: number[] = [];
  for (let pa = axis.minPa; pa <= axis.maxPa - stepPa / 2; pa += step) ticks.push(pa);
  return ticks;
}

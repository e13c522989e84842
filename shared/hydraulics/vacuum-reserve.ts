import { saturationPressure } from '../fluid-properties/saturation-pressure';
import {
  freeAirCubicMetrePerSecond,
  type Celsius,
  type FreeAirCubicMetrePerSecond,
  type PascalAbsolute,
} from '../units/quantity';
import { boreOfArea } from './open-hose';

/** What the vacuum source could carry above the gas that comes now, free air (throughput balance at steady pressure). Negative: the pressure rises. */
export const vacuumReserve = (
  capacity: FreeAirCubicMetrePerSecond,
  gas: FreeAirCubicMetrePerSecond,
): FreeAirCubicMetrePerSecond => freeAirCubicMetrePerSecond(capacity - gas);

/** How many open hoses of this size a reserve still carries; parts of one count, nothing below 0. */
export const openingsCarried = (reserve: number, oneHose: number): number => Math.max(0, reserve) / oneHose;

/** Bore of the largest opening that a reserve carries, m, where 1 m² lets this much free air pass; 0 where nothing is left. */
export const largestOpeningCarried = (reserve: number, flowPerSquareMetre: number): number =>
  boreOfArea(Math.max(0, reserve) / flowPerSquareMetre);

/**
 * Share of its suction that a liquid-ring source keeps with seal water of another temperature: (p − p_v(t)) ÷
 * (p − p_v(t₀)), as the vapour of the ring takes up room (common practice, no source; a site's own curve at the other
 * temperature is better). 0 where the ring itself boils.
 */
export function sealWaterFactor(pressure: PascalAbsolute, seal: Celsius, sealOfCurve: Celsius): number {
  const left = Math.max(0, pressure - saturationPressure(seal));
  return left / (pressure - saturationPressure(sealOfCurve));
}

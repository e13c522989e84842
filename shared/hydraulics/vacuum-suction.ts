import {
  pascalAbsolute,
  type Celsius,
  type CubicMetrePerSecond,
  type FreeAirCubicMetrePerSecond,
  type PascalAbsolute,
} from '../units/quantity';
import { freeAirOfThroughput } from './free-air';

/**
 * Suction S(p) of a vacuum source, m³/s at inlet conditions: straight lines between the rows of its curve
 * (pressures ascending). NaN outside the rows: nothing is extrapolated.
 */
export function suctionAt(
  pressurePa: readonly number[],
  suctionM3PerS: readonly number[],
  pressure: PascalAbsolute,
): number {
  for (let i = 1; i < pressurePa.length; i++) {
    const high = pressurePa[i] ?? Number.NaN;
    const low = pressurePa[i - 1] ?? Number.NaN;
    if (pressure >= low && pressure <= high) {
      const share = high === low ? 0 : (pressure - low) / (high - low);
      const from = suctionM3PerS[i - 1] ?? Number.NaN;
      return from + share * ((suctionM3PerS[i] ?? Number.NaN) - from);
    }
  }
  return Number.NaN;
}

/** Dry gas carried away at steady pressure, Pa m³/s: Q = S (p − p_v). The rest of the pressure is water vapour (Dalton). Never below 0. */
export const suctionThroughput = (
  suction: CubicMetrePerSecond,
  pressure: PascalAbsolute,
  vapourPressure: PascalAbsolute,
): number => suction * Math.max(0, pressure - vapourPressure);

/** Pressure at which a source of suction S carries a throughput Q: p = Q/S + p_v. */
export const equilibriumPressure = (
  throughput: number,
  suction: CubicMetrePerSecond,
  vapourPressure: PascalAbsolute,
): PascalAbsolute => pascalAbsolute(throughput / suction + vapourPressure);

/** Gas load of a source from its share of speed: speed × S(p) (p − p_v), as free air; the gas has the temperature of the separator's water. */
export const gasLoadBySpeed = (
  speed: number,
  suction: CubicMetrePerSecond,
  pressure: PascalAbsolute,
  vapourPressure: PascalAbsolute,
  gas: Celsius,
): FreeAirCubicMetrePerSecond => freeAirOfThroughput(speed * suctionThroughput(suction, pressure, vapourPressure), gas);

import { standardGravityMPerS2 } from '../units/constants';
import {
  metre,
  pascalDifference,
  type KilogramPerCubicMetre,
  type Metre,
  type PascalAbsolute,
  type PascalDifference,
} from '../units/quantity';

/**
 * Net positive suction head available at a pump, m: (p − p_v)/(ρ g) + v²/(2 g), with the inlet's absolute pressure
 * brought to the reference plane of the impeller (ISO 9906:2012). `velocity` in m/s, 0 where unknown (then low by v²/2g).
 */
export function npshAvailable(
  inlet: PascalAbsolute,
  vapourPressure: PascalAbsolute,
  density: KilogramPerCubicMetre,
  velocity = 0,
): Metre {
  return metre(
    (inlet - vapourPressure) / (density * standardGravityMPerS2) + (velocity * velocity) / (2 * standardGravityMPerS2),
  );
}

/** By how much the inlet's pressure may fall until NPSH available meets its limit, Pa: (NPSH_A − limit) ρ g. */
export const npshMargin = (available: Metre, limit: Metre, density: KilogramPerCubicMetre): PascalDifference =>
  pascalDifference((available - limit) * density * standardGravityMPerS2);

import {
  metre,
  pascalAbsolute,
  type KilogramPerCubicMetre,
  type Metre,
  type PascalAbsolute,
  type PascalDifference,
} from '../units/quantity';
import { staticHead } from './static-head';

/**
 * Pressure at a place on the supply main, downstream of its anchor (supply tank or sensor):
 * p = p_a + ρ g (z_a − z) − Δp. Bernoulli with losses; velocity head left out (0.5 kPa at 1 m/s, and it lowers p).
 */
export const supplyMainPressure = (
  anchor: PascalAbsolute,
  density: KilogramPerCubicMetre,
  anchorElevation: Metre,
  elevation: Metre,
  loss: PascalDifference,
): PascalAbsolute => pascalAbsolute(anchor + staticHead(density, metre(anchorElevation - elevation)) - loss);

/** The same on the return main, upstream of its anchor (separator's return inlet or sensor): p = p_a + ρ g (z_a − z) + Δp. */
export const returnMainPressure = (
  anchor: PascalAbsolute,
  density: KilogramPerCubicMetre,
  anchorElevation: Metre,
  elevation: Metre,
  loss: PascalDifference,
): PascalAbsolute => pascalAbsolute(anchor + staticHead(density, metre(anchorElevation - elevation)) + loss);

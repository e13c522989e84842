import type { Fluid } from '@ebbline/shared/fluid-properties/fluid';
import { liquidWaterRange } from '@ebbline/shared/fluid-properties/liquid-water';
import { celsius, type Celsius, type KilogramPerCubicMetre } from '@ebbline/shared/units/quantity';

/**
 * Density by which standing liquid weighs, kg/m³: `density` where its source knows it. Beyond that, and as far as liquid water is
 * known, it is the one at the source's end: it changes by 0.05 % in a kelvin, 0.15 kPa in 1.5 m of column 20 K further on, and
 * a margin that vanished there would leave a hot loop unwatched. What heat, flow or viscosity rest on takes the property itself,
 * which ends with its source.
 */
export function columnDensity(
  fluid: Fluid,
  temperature: Celsius,
  density: KilogramPerCubicMetre,
): KilogramPerCubicMetre {
  if (!Number.isNaN(density)) return density;
  if (!(temperature >= liquidWaterRange.minimum && temperature <= liquidWaterRange.maximum)) return density;
  return fluid.density(celsius(Math.min(Math.max(temperature, fluid.minimumC), fluid.maximumC)));
}

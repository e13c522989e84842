import type { Fluid } from '@ebbline/shared/fluid-properties/fluid';
import { combine3 } from '@ebbline/shared/uncertainty/combine';
import { differenceParts } from './difference-parts';
import { part } from './uncertainty-budget';
import type { UnitFrame } from './unit-frame';
import { partOf } from './write-point';

/**
 * Standard uncertainty of Q = ρ q c_p (t_return − t_supply), W (GUM eq. 10, 13, 16), part by part: meter, heat capacity, and
 * the two thermometers with what a matched pair has in common.
 */
export function heatParts(
  frame: UnitFrame,
  slots: { readonly flow: number; readonly supply: number; readonly returned: number },
  water: {
    readonly fluid: Fluid;
    readonly density: number;
    readonly massFlow: number;
    readonly heatCapacity: number;
  },
  difference: number,
): number {
  const { fluid, density, massFlow, heatCapacity } = water;
  return combine3(
    partOf(frame, slots.flow, density * heatCapacity * difference),
    part(frame, 'heat capacity', massFlow * heatCapacity * difference * fluid.heatCapacityRelativeU),
    differenceParts(frame, slots.returned, slots.supply, massFlow * heatCapacity),
  );
}

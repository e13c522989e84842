import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { storedWaterM3 } from './stored';

/**
 * Conductivities at 25 °C, S/m: the loop's treated water, treated water from the top-up, hard facility water.
 * Common practice, no source.
 */
export const usualConductivitySPerM = 20e-4;
const topUpSPerM = 5e-4;
const facilitySPerM = 800e-4;

/** Conductivity of the loop's water, taken as mixed throughout, S/m at 25 °C. */
export function conductivitySPerM(parameters: PlantParameters, state: PlantState): number {
  return state.saltsSM2 / storedWaterM3(parameters, state);
}

/** Salts come in with water; what leaves as vapour leaves them behind. */
export function saltsWithWater(state: PlantState, topUpM3: number, facilityM3: number): void {
  state.saltsSM2 += topUpM3 * topUpSPerM + facilityM3 * facilitySPerM;
}

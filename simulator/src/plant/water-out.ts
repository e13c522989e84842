import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { storedWaterM3 } from './stored';
import { waterHeatJPerM3K } from './water';

/** Counts water that leaves the loop as a liquid: its volume, heat and salts. Call before it is taken away. */
export function countWaterOut(parameters: PlantParameters, state: PlantState, outM3: number, outC: number): void {
  state.sums.waterOutM3 += outM3;
  state.sums.waterHeatJ -= outM3 * outC * waterHeatJPerM3K;
  state.saltsSM2 *= 1 - outM3 / storedWaterM3(parameters, state);
}

/** Takes water out of the separator, with the air dissolved in it. */
export function takeFromSeparator(parameters: PlantParameters, state: PlantState, outM3: number): void {
  if (outM3 <= 0) return;
  countWaterOut(parameters, state, outM3, state.separatorC);
  const airMol = (state.separatorDissolvedMol * outM3) / state.separatorWaterM3;
  state.separatorDissolvedMol -= airMol;
  state.sums.gasOutMol += airMol;
  state.separatorWaterM3 -= outM3;
}

/** The same from the supply tank. */
export function takeFromSupplyTank(parameters: PlantParameters, state: PlantState, outM3: number): void {
  if (outM3 <= 0) return;
  countWaterOut(parameters, state, outM3, state.supplyTankC);
  const airMol = (state.supplyTankDissolvedMol * outM3) / state.supplyTankWaterM3;
  state.supplyTankDissolvedMol -= airMol;
  state.sums.gasOutMol += airMol;
  state.supplyTankWaterM3 -= outM3;
}

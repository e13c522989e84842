import type { PlantInputs } from '../plant-inputs';
import type { PlantParameters } from '../plant-parameters';
import type { PlantState } from '../plant-state';
import { separatorSetPa } from '../set-points';

/** So near its set point the separator counts as evacuated, Pa. */
const evacuatedWithinPa = 3000;

export function isEvacuated(state: PlantState, inputs: PlantInputs): boolean {
  return state.last.separatorPa < separatorSetPa(inputs) + evacuatedWithinPa;
}

export function isFlowing(parameters: PlantParameters, state: PlantState): boolean {
  return state.last.loopFlowM3PerS > 0.8 * parameters.ratedFlowM3PerS;
}

/** Plates stand within so much of the supply water once their load is off, K. */
const coolWithinK = 1;

export function platesAreCool(state: PlantState): boolean {
  const limitC = state.supplyTankC + coolWithinK;
  return state.racks.every(({ chipC, probeChipC }) => chipC < limitC && probeChipC < limitC);
}

/** Gas in racks and return main, mol. */
export function gasInPipesMol(state: PlantState): number {
  let sum = 0;
  for (const mol of state.returnMainGasMol) sum += mol;
  for (const rack of state.racks) sum += rack.supplyGasMol + rack.returnGasMol;
  return sum;
}

/** Water that the two tanks lack against their usual levels, m³; below zero: too much. */
export function missingInTanksM3({ volumeM3 }: PlantParameters, state: PlantState): number {
  return volumeM3.supplyTankWater + volumeM3.separatorWater - state.supplyTankWaterM3 - state.separatorWaterM3;
}

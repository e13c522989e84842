import type { PlantParameters } from '../plant-parameters';
import type { PlantState, Sums } from '../plant-state';
import { storedGasMol, storedHeatJ, storedWaterM3 } from '../stored';
import type { SharedLoopState } from './shared-loop-state';
import { sharedRacksType } from './shared-loop-type';

/** Over all units and the racks between them. */
function over(
  parameters: readonly PlantParameters[],
  state: SharedLoopState,
  stored: (parameters: PlantParameters, part: PlantState) => number,
): number {
  const units = state.units.map((unit, i) => stored(parameters[i] as PlantParameters, unit));
  return units.reduce((sum, value) => sum + value, stored(sharedRacksType, state.racks));
}

export const sharedWaterM3 = (parameters: readonly PlantParameters[], state: SharedLoopState): number =>
  over(parameters, state, storedWaterM3);
export const sharedGasMol = (parameters: readonly PlantParameters[], state: SharedLoopState): number =>
  over(parameters, state, (_parameters, part) => storedGasMol(part));
export const sharedHeatJ = (parameters: readonly PlantParameters[], state: SharedLoopState): number =>
  over(parameters, state, storedHeatJ);

export const sharedSum = ({ units, racks }: SharedLoopState, name: keyof Sums): number =>
  units.reduce((sum, unit) => sum + unit.sums[name], racks.sums[name]);

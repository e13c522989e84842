import type { PlantInputs } from '../plant-inputs';
import type { PlantParameters } from '../plant-parameters';
import { readPlant, type Readings } from '../plant-readings';
import type { PlantState } from '../plant-state';
import type { SharedLoopState } from './shared-loop-state';
import { racksPerUnit } from './shared-loop-type';

/** What one unit's gateway tells: its own parts, and its share of the loop's racks under its own branch names. */
export function readSharedUnit(
  parameters: PlantParameters,
  state: SharedLoopState,
  index: number,
  inputs: PlantInputs,
): Readings {
  const unit = state.units[index] as PlantState;
  const racks = state.racks.racks.slice(index * racksPerUnit, (index + 1) * racksPerUnit);
  return readPlant({ ...parameters, racks: racks.length }, { ...unit, racks }, inputs);
}

import { settledState } from '../plant/initial-state';
import type { PlantInputs } from '../plant/plant-inputs';
import type { PlantParameters } from '../plant/plant-parameters';
import { readPlant, type Readings } from '../plant/plant-readings';
import type { PlantState } from '../plant/plant-state';
import { longestStepS, stepPlant } from '../plant/step-plant';
import type { ShapeParts } from './shape-faults';
import { atRest, settlingS, settlingStepS, type SettledPlants, type UnitPlant } from './unit-plant';

/** Shape (a): supply tank, separator and transfer pump, alone on its loop. */
export class TankPlant implements UnitPlant {
  readonly parts: ShapeParts = {};
  readonly state: PlantState;

  constructor(
    id: string,
    readonly parameters: PlantParameters,
    readonly inputs: PlantInputs,
    settled: SettledPlants,
  ) {
    this.state = atRest(settled, id, () => settledState(parameters, inputs, settlingS, settlingStepS));
  }

  advance(): void {
    const steps = Math.round(1 / longestStepS);
    for (let i = 0; i < steps; i += 1) stepPlant(this.parameters, this.state, this.inputs, 1 / steps);
  }

  read(): Readings {
    return readPlant(this.parameters, this.state, this.inputs);
  }

  operated(): PlantState {
    return this.state;
  }
}

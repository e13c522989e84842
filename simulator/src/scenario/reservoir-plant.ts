import type { PlantInputs } from '../plant/plant-inputs';
import type { PlantParameters } from '../plant/plant-parameters';
import type { Readings } from '../plant/plant-readings';
import type { PlantState } from '../plant/plant-state';
import { readReservoirPump, reservoirState, stepReservoirPump } from '../plant/reservoir-pump/step-reservoir-pump';
import { longestStepS } from '../plant/step-plant';
import type { ShapeParts } from './shape-faults';
import { atRest, settlingS, type SettledPlants, type UnitPlant } from './unit-plant';

/** Shape (c): a pump from the vacuum reservoir straight into the loop. */
export class ReservoirPlant implements UnitPlant {
  readonly parts: ShapeParts = {};
  private readonly state: PlantState;

  constructor(
    id: string,
    readonly parameters: PlantParameters,
    readonly inputs: PlantInputs,
    settled: SettledPlants,
  ) {
    this.state = atRest(settled, id, () => {
      const state = reservoirState(parameters);
      this.run(state, settlingS);
      return state;
    });
  }

  advance(): void {
    this.run(this.state, 1);
  }

  read(): Readings {
    return readReservoirPump(this.parameters, this.state, this.inputs);
  }

  operated(): PlantState {
    return this.state;
  }

  private run(state: PlantState, seconds: number): void {
    const steps = Math.round(seconds / longestStepS);
    for (let i = 0; i < steps; i += 1) stepReservoirPump(this.parameters, state, this.inputs, seconds / steps);
  }
}

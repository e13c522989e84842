import { readAlternatingTanks } from '../plant/alternating-tanks/alternating-readings';
import { alternatingState, soundTransfer, type AlternatingState } from '../plant/alternating-tanks/alternating-state';
import { stepAlternatingTanks } from '../plant/alternating-tanks/step-alternating-tanks';
import type { PlantInputs } from '../plant/plant-inputs';
import type { PlantParameters } from '../plant/plant-parameters';
import type { Readings } from '../plant/plant-readings';
import type { PlantState } from '../plant/plant-state';
import { longestStepS } from '../plant/step-plant';
import { atRest, settlingS, type SettledPlants, type UnitPlant } from './unit-plant';

/** Shape (b): one tank fills under vacuum while the other discharges. */
export class AlternatingPlant implements UnitPlant {
  readonly parts = { transfer: soundTransfer() };
  private readonly state: AlternatingState;

  constructor(
    id: string,
    readonly parameters: PlantParameters,
    readonly inputs: PlantInputs,
    settled: SettledPlants,
  ) {
    this.state = atRest(settled, id, () => {
      const state = alternatingState(parameters);
      this.run(state, settlingS);
      return state;
    });
  }

  advance(): void {
    this.run(this.state, 1);
  }

  read(): Readings {
    return readAlternatingTanks(this.parameters, this.state, this.inputs);
  }

  operated(): PlantState {
    return this.state.loop;
  }

  private run(state: AlternatingState, seconds: number): void {
    const steps = Math.round(seconds / longestStepS);
    for (let i = 0; i < steps; i += 1) {
      stepAlternatingTanks(this.parameters, state, this.inputs, this.parts.transfer, seconds / steps);
    }
  }
}

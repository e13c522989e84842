import type { PlantInputs } from '../plant/plant-inputs';
import type { PlantParameters } from '../plant/plant-parameters';
import type { PlantState } from '../plant/plant-state';
import { readSharedUnit } from '../plant/shared-loop/shared-readings';
import { sharedLoopState, soundHeader, type SharedLoopState } from '../plant/shared-loop/shared-loop-state';
import { racksPerUnit } from '../plant/shared-loop/shared-loop-type';
import { stepSharedLoop, type SharedUnit } from '../plant/shared-loop/step-shared-loop';
import { longestStepS } from '../plant/step-plant';
import { atRest, settlingS, settlingStepS, type SettledPlants, type UnitPlant } from './unit-plant';

/** The plant of a loop that several units share. It comes to rest when the first of them is asked, once all have joined. */
export class SharedPlant {
  private readonly members: SharedUnit[] = [];
  private kept: SharedLoopState | null = null;

  constructor(
    private readonly loop: string,
    private readonly settled: SettledPlants,
  ) {}

  /** `parameters` as the unit's gateway sees it, with its share of the racks; the unit itself has none. */
  join(parameters: PlantParameters, inputs: PlantInputs): UnitPlant {
    const member: SharedUnit = { parameters: { ...parameters, racks: 0 }, inputs, header: soundHeader() };
    const index = this.members.push(member) - 1;
    return {
      parameters,
      inputs,
      parts: { header: member.header },
      // the first unit's second is everybody's
      advance: () => {
        if (index === 0) this.run(this.state, 1, longestStepS);
      },
      read: () => readSharedUnit(member.parameters, this.state, index, inputs),
      operated: () => this.operated(index),
    };
  }

  private operated(index: number): Readonly<PlantState> {
    const { units, racks } = this.state;
    const unit = units[index] as PlantState;
    return { ...unit, racks: racks.racks.slice(index * racksPerUnit, (index + 1) * racksPerUnit) };
  }

  private get state(): SharedLoopState {
    this.kept ??= atRest(this.settled, this.loop, () => {
      const state = sharedLoopState(this.members.map(({ parameters }) => parameters));
      this.run(state, settlingS, settlingStepS);
      return state;
    });
    return this.kept;
  }

  private run(state: SharedLoopState, seconds: number, stepS: number): void {
    const steps = Math.round(seconds / stepS);
    for (let i = 0; i < steps; i += 1) stepSharedLoop(this.members, state, seconds / steps);
  }
}

import { settledState } from '../../../simulator/src/plant/initial-state';
import { ratedInputs, type PlantInputs } from '../../../simulator/src/plant/plant-inputs';
import type { PlantParameters, UnitKind } from '../../../simulator/src/plant/plant-parameters';
import { readPlant, type Readings } from '../../../simulator/src/plant/plant-readings';
import type { PlantState } from '../../../simulator/src/plant/plant-state';
import { stepPlant } from '../../../simulator/src/plant/step-plant';
import { unitTypes } from '../../../simulator/src/plant/unit-types';
import type { ActiveFault } from '../../../simulator/src/faults/active-faults';
import { applyFaults } from '../../../simulator/src/faults/active-faults';
import type { FaultOrder } from '../../../simulator/src/faults/fault';

export type Control = PlantParameters['vacuum']['control'];

/** A unit type with the vacuum control that a test needs. */
export function plantOf(kind: UnitKind, control: Control = 'continuous'): PlantParameters {
  const type = unitTypes[kind];
  return { ...type, vacuum: { ...type.vacuum, control } };
}

/** A settled unit at rated load that a test runs on, second by second. */
export class RunningPlant {
  readonly inputs: PlantInputs;
  readonly state: PlantState;
  readonly before: Readings;
  readonly faults: ActiveFault[] = [];
  private seconds = 0;

  constructor(
    readonly parameters: PlantParameters,
    private readonly stepS = 0.1,
  ) {
    this.inputs = ratedInputs(parameters);
    this.state = settledState(parameters, this.inputs, 900);
    this.before = this.read();
  }

  start(order: Partial<FaultOrder> & Pick<FaultOrder, 'fault'>): ActiveFault {
    const whole = { size: 'usual', rack: 0, checkValve: 'good', direction: 'rise', ...order } as const;
    const active = { order: whole, sinceS: this.seconds, repairedS: null };
    this.faults.push(active);
    return active;
  }

  repair(active: ActiveFault): void {
    active.repairedS = this.seconds;
  }

  /** Runs up to a second and reads. */
  at(seconds: number): Readings {
    const usual = ratedInputs(this.parameters);
    while (this.seconds < seconds) {
      const target = { inputs: this.inputs, lineLost: false };
      Object.assign(this.inputs, { facilityFlowShare: 1, inLeakFreeM3PerS: 0 });
      this.inputs.opening.fill(null);
      for (let r = 0; r < this.parameters.racks; r += 1) this.inputs.loadShare[r] = usual.loadShare[r] ?? 1;
      applyFaults(this.faults, target, this.parameters, this.seconds);
      for (let i = 0; i < Math.round(1 / this.stepS); i += 1) {
        stepPlant(this.parameters, this.state, this.inputs, this.stepS);
      }
      this.seconds += 1;
    }
    return this.read();
  }

  read(): Readings {
    return readPlant(this.parameters, this.state, this.inputs);
  }
}

/** Reading of a point; throws where the plant has none. */
export function of(readings: Readings, point: string): number {
  const value = readings.get(point);
  if (value === undefined) throw new Error(`the plant tells no ${point}`);
  return value;
}

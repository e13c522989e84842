import { settledState } from '../../../simulator/src/plant/initial-state';
import { applyOperations, beginOperation } from '../../../simulator/src/plant/operations/active-operation';
import type { ActiveOperation } from '../../../simulator/src/plant/operations/active-operation';
import type { OperationOrder } from '../../../simulator/src/plant/operations/operation';
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

const types = new Map<string, PlantParameters>();

/** A unit type with the vacuum control that a test needs: the same object each time. */
export function plantOf(kind: UnitKind, control: Control = 'continuous'): PlantParameters {
  const type = unitTypes[kind];
  const plant = types.get(`${kind} ${control}`) ?? { ...type, vacuum: { ...type.vacuum, control } };
  types.set(`${kind} ${control}`, plant);
  return plant;
}

/** Each plant settles once in a test file. */
const settled = new Map<PlantParameters, PlantState>();

function settledOnce(parameters: PlantParameters): PlantState {
  const state = settled.get(parameters) ?? settledState(parameters, ratedInputs(parameters), 900);
  settled.set(parameters, state);
  return structuredClone(state);
}

/** A settled unit at rated load that a test runs on, second by second. */
export class RunningPlant {
  readonly inputs: PlantInputs;
  readonly state: PlantState;
  readonly before: Readings;
  readonly faults: ActiveFault[] = [];
  readonly operations: ActiveOperation[] = [];
  /** Chip power of every rack, of rated. */
  loadShare = 1;
  private seconds = 0;

  constructor(
    readonly parameters: PlantParameters,
    private readonly stepS = 0.1,
  ) {
    this.inputs = ratedInputs(parameters);
    this.state = settledOnce(parameters);
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

  operate(operation: OperationOrder['operation'], own: Partial<OperationOrder> = {}): void {
    this.operations.push(beginOperation({ operation, rack: 0, ...own }, this.state, this.seconds));
  }

  /** Runs up to a second and reads. */
  at(seconds: number): Readings {
    while (this.seconds < seconds) this.runSecond();
    return this.read();
  }

  /** Runs so many seconds more and reads. */
  after(seconds: number): Readings {
    return this.at(this.seconds + seconds);
  }

  /** Runs until every operation is done; throws where that takes longer than `mostS`. */
  finish(mostS: number): Readings {
    const untilS = this.seconds + mostS;
    while (this.operations.length > 0) {
      if (this.seconds >= untilS) throw new Error(`${this.operations[0]?.order.operation} takes over ${mostS} s`);
      this.runSecond();
    }
    return this.read();
  }

  read(): Readings {
    return readPlant(this.parameters, this.state, this.inputs);
  }

  private runSecond(): void {
    const { inputs, parameters } = this;
    Object.assign(inputs, {
      ambientPa: 101300,
      facilitySupplyC: parameters.exchanger.facilitySupplyC,
      facilityFlowShare: 1,
      inLeakFreeM3PerS: 0,
    });
    inputs.opening.fill(null);
    inputs.loadShare.fill(this.loadShare);
    applyFaults(this.faults, { inputs, lineLost: false }, parameters, this.seconds);
    applyOperations(this.operations, parameters, this.state, inputs, this.seconds);
    for (let i = 0; i < Math.round(1 / this.stepS); i += 1) stepPlant(parameters, this.state, inputs, this.stepS);
    this.seconds += 1;
  }
}

/** Reading of a point; throws where the plant has none. */
export function of(readings: Readings, point: string): number {
  const value = readings.get(point);
  if (value === undefined) throw new Error(`the plant tells no ${point}`);
  return value;
}

import { applyFaults, type ActiveFault } from '../faults/active-faults';
import type { FaultTarget } from '../faults/fault';
import { settledState } from '../plant/initial-state';
import { ratedInputs, type PlantInputs } from '../plant/plant-inputs';
import type { PlantParameters } from '../plant/plant-parameters';
import { readPlant, type Readings } from '../plant/plant-readings';
import type { PlantState } from '../plant/plant-state';
import { longestStepS, stepPlant } from '../plant/step-plant';
import { unitTypes } from '../plant/unit-types';
import type { RandomSource } from '../sensors/random-source';
import { makeSensor, senseValue, type Sensor } from '../sensors/sensor';
import { sensorKinds } from '../sensors/sensor-kind';
import { sensorKindOf } from '../sensors/sensor-of-point';
import { drawLoadPhases, loadShareAt, type LoadPhases } from './day-profile';
import type { FleetUnit } from './demo-fleet';
import { seededRandom } from './seeded-random';
import type { Surroundings } from './surroundings';

/** How long a unit runs unseen before its first second, so that it starts at rest. */
const settlingS = 900;
/** Nothing happens fast meanwhile. */
const settlingStepS = 0.2;

/**
 * Plants that came to rest before, by unit: whoever makes many simulations of one seed and start hands the same map to
 * all of them, and each unit settles once.
 */
export type SettledPlants = Map<string, PlantState>;

/** One unit with its plant, its sensors and its faults. */
export class UnitSimulation {
  readonly faults: ActiveFault[] = [];
  readonly parameters: PlantParameters;
  readonly state: PlantState;
  private readonly target: FaultTarget;
  private readonly phases: LoadPhases;
  private readonly noise: RandomSource;
  private readonly sensors = new Map<string, Sensor>();
  private elapsedS = 0;

  constructor(
    readonly unit: FleetUnit,
    seed: number,
    startS: number,
    around: Surroundings,
    settled: SettledPlants = new Map(),
  ) {
    this.parameters = parametersOf(unit);
    this.phases = drawLoadPhases(this.parameters.racks, seededRandom(seed, `${unit.id} load`));
    this.noise = seededRandom(seed, `${unit.id} noise`);
    this.target = { inputs: ratedInputs(this.parameters), lineLost: false };
    this.setInputs(startS, around);
    const atRest = settled.get(unit.id) ?? settledState(this.parameters, this.inputs, settlingS, settlingStepS);
    settled.set(unit.id, atRest);
    this.state = structuredClone(atRest);
    this.state.filterLoad = unit.filterLoad;
    const drawn = seededRandom(seed, `${unit.id} sensors`);
    for (const point of readPlant(this.parameters, this.state, this.inputs).keys()) {
      this.sensors.set(point, makeSensor(sensorKinds[sensorKindOf(point, unit.branchMeter)], drawn));
    }
  }

  get inputs(): PlantInputs {
    return this.target.inputs;
  }

  /** Seconds of the plant since the start: the time of its faults. */
  get nowS(): number {
    return this.elapsedS;
  }

  get lineLost(): boolean {
    return this.target.lineLost;
  }

  /** Runs the plant for one second. */
  advance(epochS: number, around: Surroundings): void {
    this.setInputs(epochS, around);
    applyFaults(this.faults, this.target, this.parameters, this.elapsedS);
    const steps = Math.round(1 / longestStepS);
    for (let i = 0; i < steps; i += 1) stepPlant(this.parameters, this.state, this.inputs, 1 / steps);
    this.elapsedS += 1;
  }

  /** What the unit's sensors tell now. */
  sense(): Readings {
    const truth = readPlant(this.parameters, this.state, this.inputs);
    for (const [point, sensor] of this.sensors) {
      truth.set(point, senseValue(sensor, truth.get(point) ?? Number.NaN, this.elapsedS, 1, this.noise));
    }
    return truth;
  }

  private setInputs(epochS: number, around: Surroundings): void {
    const { inputs } = this.target;
    inputs.ambientPa = around.ambientPa;
    inputs.hallC = around.hallC;
    // the bench has a small cooler of its own
    inputs.facilitySupplyC =
      this.unit.kind === 'bench' ? this.parameters.exchanger.facilitySupplyC : around.facilitySupplyC;
    inputs.facilityFlowShare = 1;
    inputs.inLeakFreeM3PerS = this.unit.inLeakLPerMin / 60000;
    inputs.opening.fill(null);
    for (let r = 0; r < this.parameters.racks; r += 1) {
      inputs.loadShare[r] = loadShareAt(this.unit.meanLoad, this.phases, r, epochS);
    }
    this.target.lineLost = false;
  }
}

/** The unit's type with what is its own. */
export function parametersOf(unit: FleetUnit): PlantParameters {
  const type = unitTypes[unit.kind];
  return {
    ...type,
    vacuum: { ...type.vacuum, control: unit.exhaustMeter ? 'continuous' : 'startStop' },
    exchanger: { ...type.exchanger, uaWPerK: type.exchanger.uaWPerK * unit.exchangerShare },
  };
}

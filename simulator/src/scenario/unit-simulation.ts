import { applyFaults, type ActiveFault } from '../faults/active-faults';
import type { FaultTarget } from '../faults/fault';
import { applyOperations, type ActiveOperation } from '../plant/operations/active-operation';
import { copyCondition } from '../plant/condition';
import { ratedInputs, type PlantInputs } from '../plant/plant-inputs';
import type { PlantParameters } from '../plant/plant-parameters';
import type { Readings } from '../plant/plant-readings';
import { Ageing } from './ageing';
import { drawLoadPhases, loadShareAt, type LoadPhases } from './day-profile';
import type { FleetUnit } from './demo-fleet';
import { seededRandom } from './seeded-random';
import { applyShapeFaults, type ActiveShapeFault } from './shape-faults';
import type { Surroundings } from './surroundings';
import { parametersOf } from './unit-parameters';
import type { UnitPlant } from './unit-plant';
import { UnitSensors } from './unit-sensors';

/** Makes the plant once the unit's inputs stand at its first second. */
export type PlantMaker = (unit: FleetUnit, parameters: PlantParameters, inputs: PlantInputs) => UnitPlant;

/** One unit with its plant, its sensors and its faults. */
export class UnitSimulation {
  readonly faults: ActiveFault[] = [];
  readonly shapeFaults: ActiveShapeFault[] = [];
  readonly operations: ActiveOperation[] = [];
  readonly sensors: UnitSensors;
  readonly ageing: Ageing;
  readonly plant: UnitPlant;
  private readonly target: FaultTarget;
  private readonly phases: LoadPhases;
  private around: Surroundings;
  private elapsedS = 0;

  constructor(
    readonly unit: FleetUnit,
    seed: number,
    startS: number,
    around: Surroundings,
    makePlant: PlantMaker,
  ) {
    const parameters = parametersOf(unit);
    this.phases = drawLoadPhases(parameters.racks, seededRandom(seed, `${unit.id} load`));
    this.sensors = new UnitSensors(unit, seed);
    this.ageing = new Ageing(unit);
    this.around = around;
    const inputs = ratedInputs(parameters);
    this.target = { inputs, lineLost: false };
    this.setInputs(inputs, startS, around);
    this.plant = makePlant(unit, parameters, inputs);
  }

  /** Seconds of the plant since the start: the time of its faults. */
  get nowS(): number {
    return this.elapsedS;
  }

  get inputs(): PlantInputs {
    return this.plant.inputs;
  }

  get lineLost(): boolean {
    return this.target.lineLost;
  }

  /** Runs the plant for one second. */
  advance(epochS: number, around: Surroundings): void {
    this.around = around;
    this.setInputs(this.target.inputs, epochS, around);
    applyFaults(this.faults, this.target, this.plant.parameters, this.elapsedS);
    applyShapeFaults(this.shapeFaults, this.plant.parts, this.elapsedS);
    const { parameters, inputs } = this.plant;
    applyOperations(this.operations, parameters, this.plant.operated(), inputs, this.elapsedS);
    this.plant.advance();
    this.ageing.pass(1);
    this.elapsedS += 1;
  }

  /** What the unit's sensors tell now. */
  sense(): Readings {
    const truth = this.plant.read();
    this.ageing.read(truth);
    return this.sensors.sense(truth, this.elapsedS, this.around);
  }

  private setInputs(inputs: PlantInputs, epochS: number, around: Surroundings): void {
    inputs.ambientPa = around.ambientPa;
    inputs.hallC = around.hallC;
    // the bench has a small cooler of its own
    inputs.facilitySupplyC = this.unit.kind === 'bench' ? 25 : around.facilitySupplyC;
    inputs.facilityFlowShare = 1;
    inputs.inLeakFreeM3PerS = this.ageing.inLeakLPerMin() / 60000;
    inputs.opening.fill(null);
    for (let r = 0; r < inputs.loadShare.length; r += 1) {
      inputs.loadShare[r] = loadShareAt(this.unit.meanLoad, this.phases, r, epochS);
    }
    this.ageing.apply(inputs.aged);
    copyCondition(inputs.aged, inputs.condition);
    const { measuredOffset } = inputs;
    measuredOffset.separatorPa = this.sensors.deceitAt('separator.pressure');
    measuredOffset.supplyTankPa = this.sensors.deceitAt('supplyTank.pressure');
    measuredOffset.supplyC = this.sensors.deceitAt('supply.temperature');
    measuredOffset.supplyLevelM = this.sensors.deceitAt('supplyTank.level');
    this.target.lineLost = false;
  }
}

import { mixedC } from '../cell';
import { stepExchanger } from '../heat-exchanger';
import { ratedState } from '../initial-state';
import { solveFlows } from '../loop-hydraulics';
import { stepReturnMain, stepSupplyMain } from '../mains';
import type { PlantInputs } from '../plant-inputs';
import type { PlantParameters } from '../plant-parameters';
import { readPlant, type Readings } from '../plant-readings';
import type { PlantState } from '../plant-state';
import { separatorPressurePa, stepCarryOver, stepSeparatorWater } from '../separator';
import { stepSpills } from '../spill';
import { stepSeparatorGas } from '../step-plant';
import { stepRacks } from '../step-racks';
import { stepSupplyTankWater } from '../supply-tank';
import { pumpHeatKM3 } from '../transfer-pump';
import { stepValve } from '../valve-control';
import { stepWaterInAndOut } from '../water-in-and-out';
import { stepLoopPump } from './loop-pump';
import { headerM3PerPa } from './reservoir-type';

/** Full, evacuated, warm, near its rated duty. There is no gas on the supply side, so dissolved air stays where it is. */
export function reservoirState(parameters: PlantParameters): PlantState {
  const state = ratedState(parameters);
  state.supplyTankGasMol = 0;
  return state;
}

/** One step of shape (c), in place: reservoir, pump, filter, exchanger, header, loop, and back into the reservoir. */
export function stepReservoirPump(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  dtS: number,
): void {
  const { last } = state;
  solveFlows(parameters, state, inputs, dtS);
  stepLoopPump(parameters, state, inputs, dtS);
  const inM3 = last.transferM3PerS * dtS;
  const pumpHeat = pumpHeatKM3(parameters, state, dtS);
  state.pumpLineC = mixedC(parameters.volumeM3.unit / 2, state.pumpLineC, inM3, state.separatorC, pumpHeat);
  const cooledC = stepExchanger(parameters, state, inputs, dtS);
  stepSupplyTankWater(state, cooledC, dtS);
  stepValve(parameters, state, inputs, dtS);
  stepSupplyMain(parameters, state, state.supplyTankC, dtS);
  const racks = stepRacks(parameters, state, inputs, dtS);
  const back = stepReturnMain(parameters, state, racks, dtS);
  stepSeparatorWater(parameters, state, back, dtS);
  stepWaterInAndOut(parameters, state, inputs, dtS);
  stepSpills(parameters, state, inputs, dtS);
  stepCarryOver(parameters, state, dtS);
  stepSeparatorGas(parameters, state, inputs, back.gasMolPerS, dtS);
  last.supplyTankPa = headerPressurePa(parameters, state);
  last.separatorPa = separatorPressurePa(parameters, state);
  state.timeS += dtS;
}

/** The bladder gives way evenly; it stands at the set pressure of the type with its usual water. */
function headerPressurePa(parameters: PlantParameters, state: PlantState): number {
  const moreM3 = state.supplyTankWaterM3 - parameters.volumeM3.supplyTankWater;
  return Math.max(1000, parameters.set.supplyTankPa + moreM3 / headerM3PerPa);
}

/** Points that this shape has no part for. */
const absent = ['supplyTank.level', 'supplyTank.vent.command', 'supplyTank.vent.position', 'transfer.flow'];

export function readReservoirPump(parameters: PlantParameters, state: PlantState, inputs: PlantInputs): Readings {
  const readings = readPlant(parameters, state, inputs);
  for (const point of absent) readings.delete(point);
  return readings;
}

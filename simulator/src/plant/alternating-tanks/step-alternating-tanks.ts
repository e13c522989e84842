import { mixedC } from '../cell';
import { stepDissolvedAir } from '../dissolved-air';
import { stepExchanger } from '../heat-exchanger';
import { solveFlows } from '../loop-hydraulics';
import { stepReturnMain, stepSupplyMain } from '../mains';
import type { PlantInputs } from '../plant-inputs';
import type { PlantParameters } from '../plant-parameters';
import type { PlantState } from '../plant-state';
import { separatorPressurePa, stepCarryOver, stepSeparatorWater } from '../separator';
import { separatorSetPa } from '../set-points';
import { stepSpills } from '../spill';
import { stepSeparatorGas } from '../step-plant';
import { stepRacks } from '../step-racks';
import { regulateSupplyTank, stepSupplyTankWater, supplyTankGasM3, supplyTankPressurePa } from '../supply-tank';
import { stepValve } from '../valve-control';
import { stepWaterInAndOut } from '../water-in-and-out';
import type { AlternatingState, TransferCondition } from './alternating-state';
import { transferWhenDue } from './transfer';

/** One step of shape (b), in place: discharging tank, exchanger, loop, filling tank; and the change-over when it is due. */
export function stepAlternatingTanks(
  parameters: PlantParameters,
  state: AlternatingState,
  inputs: PlantInputs,
  condition: TransferCondition,
  dtS: number,
): void {
  const { loop } = state;
  const { last } = loop;
  // a tank that runs low is changed over, not filled with the loop shut
  loop.refilling = false;
  solveFlows(parameters, loop, inputs, dtS);
  // the exchanger's flow is the loop's own
  last.transferM3PerS = last.loopFlowM3PerS;
  const inM3 = last.loopFlowM3PerS * dtS;
  loop.pumpLineC = mixedC(parameters.volumeM3.unit / 2, loop.pumpLineC, inM3, loop.supplyTankC);
  const cooledC = stepExchanger(parameters, loop, inputs, dtS);
  last.transferM3PerS = 0;
  stepSupplyTankWater(loop, loop.supplyTankC, dtS);
  stepValve(parameters, loop, behindExchanger(loop, inputs), dtS);
  stepSupplyMain(parameters, loop, cooledC, dtS);
  const racks = stepRacks(parameters, loop, inputs, dtS);
  const back = stepReturnMain(parameters, loop, racks, dtS);
  stepSeparatorWater(parameters, loop, back, dtS);
  stepWaterInAndOut(parameters, loop, inputs, dtS);
  stepSpills(parameters, loop, inputs, dtS);
  stepCarryOver(parameters, loop, dtS);
  stepGas(parameters, loop, inputs, back.gasMolPerS, dtS);
  stepDissolvedAir(parameters, loop, dtS);
  transferWhenDue(parameters, state, condition, dtS);
  last.supplyTankPa = supplyTankPressurePa(parameters, loop);
  last.separatorPa = separatorPressurePa(parameters, loop);
  loop.timeS += dtS;
}

/** The valve's controller feels the water behind the exchanger, not the tank's. */
function behindExchanger(loop: PlantState, inputs: PlantInputs): PlantInputs {
  const supplyC = inputs.measuredOffset.supplyC + loop.exchangerHotC - loop.supplyTankC;
  return { ...inputs, measuredOffset: { ...inputs.measuredOffset, supplyC } };
}

/** A receiver so far above its set pressure is still taking the air of the tank that was emptied, Pa. */
const evacuatingPa = 400;
/** The vent of a tank that empties within a minute is so many times as wide as that of a tank that only breathes. */
const ventTimes = 4;

/**
 * Once the emptied tank is evacuated, the vacuum source delivers what the rising water pushes out into the discharging
 * tank, which needs it to hold its pressure; the bleed gives the rest. So a full cycle sends out water flow ×
 * (discharge − fill pressure) and no more: the air of the emptied tank.
 */
function stepGas(
  parameters: PlantParameters,
  loop: PlantState,
  inputs: PlantInputs,
  returnedMolPerS: number,
  dtS: number,
): void {
  const wide = { ...parameters, ratedFlowM3PerS: ventTimes * parameters.ratedFlowM3PerS };
  const { bleedMolPerS, reliefMolPerS } = regulateSupplyTank(wide, loop, openedByFlow(parameters, loop, inputs), dtS);
  const moved = stepSeparatorGas(parameters, loop, inputs, returnedMolPerS + reliefMolPerS, dtS);
  const evacuating = loop.last.separatorPa > separatorSetPa(inputs) + evacuatingPa;
  const again = evacuating ? 0 : Math.max(0, Math.min(bleedMolPerS, moved));
  loop.sums.gasInMol -= again * dtS;
  loop.sums.gasOutMol -= again * dtS;
  loop.last.exhaustMolPerS = Math.max(0, moved - again);
}

/** How long the vent's regulator takes, s: its own figure and a step. */
const regulatorS = 0.8;

/** The vent opens with the water that leaves as well as with the missing pressure, else a nearly full tank would hang kPa below its set pressure. */
function openedByFlow(parameters: PlantParameters, loop: PlantState, inputs: PlantInputs): PlantInputs {
  const { last } = loop;
  const givenPa = (last.loopFlowM3PerS * last.supplyTankPa * regulatorS) / supplyTankGasM3(parameters, loop);
  const supplyTankPa = inputs.measuredOffset.supplyTankPa - givenPa;
  return { ...inputs, measuredOffset: { ...inputs.measuredOffset, supplyTankPa } };
}

import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { mixedC } from './cell';
import { stepDissolvedAir } from './dissolved-air';
import { stepExchanger } from './heat-exchanger';
import { solveFlows } from './loop-hydraulics';
import { stepReturnMain, stepSupplyMain } from './mains';
import { sonicShare } from './opening-flow';
import { separatorGasM3, separatorPressurePa, stepCarryOver, stepSeparatorWater } from './separator';
import { stepSpills } from './spill';
import { stepRacks } from './step-racks';
import { regulateSupplyTank, stepSupplyTankWater, supplyTankPressurePa } from './supply-tank';
import { pumpHeatKM3, stepTransferPump } from './transfer-pump';
import { stepVacuumSource, vacuumBleedMolPerS } from './vacuum-source';
import { stepValve } from './valve-control';
import { freeAirMolPerM3, gasConstant } from './water';
import { stepWaterInAndOut } from './water-in-and-out';

/** Longest step that keeps the promise on accuracy, s. */
export const longestStepS = 0.1;
/** A unit that is vented comes to ambient pressure within, s. */
const ventedS = 20;

/**
 * One step of a unit and its loop, in place. The water is followed in the direction it flows, so that what
 * leaves one part enters the next with the same temperature; all exchanges are counted once on each side.
 */
export function stepPlant(parameters: PlantParameters, state: PlantState, inputs: PlantInputs, dtS: number): void {
  const { last } = state;
  solveFlows(parameters, state, inputs, dtS);
  stepTransferPump(parameters, state, inputs, dtS);
  const inM3 = last.transferM3PerS * dtS;
  state.pumpLineC = mixedC(
    parameters.volumeM3.unit / 2,
    state.pumpLineC,
    inM3,
    state.separatorC,
    pumpHeatKM3(parameters, state, dtS),
  );
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
  stepGas(parameters, state, inputs, back.gasMolPerS, dtS);
  stepDissolvedAir(parameters, state, dtS);

  last.supplyTankPa = supplyTankPressurePa(parameters, state);
  last.separatorPa = separatorPressurePa(parameters, state);
  state.timeS += dtS;
}

/** Dry gas of the two tanks: what came back with the water, leaks and bleeds in, the exhaust out. */
function stepGas(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  returnedMolPerS: number,
  dtS: number,
): void {
  const { reliefMolPerS } = regulateSupplyTank(parameters, state, inputs, dtS);
  stepSeparatorGas(parameters, state, inputs, returnedMolPerS + reliefMolPerS, dtS);
}

/**
 * Dry gas of the separator: what came with the water, leaks and bleeds in, the exhaust out.
 * @returns what went to the exhaust, mol/s; below zero where room air comes in by it.
 */
export function stepSeparatorGas(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  intoMolPerS: number,
  dtS: number,
): number {
  const leakM3PerS = parameters.baseInLeakFreeM3PerS + inputs.inLeakFreeM3PerS;
  const inLeak = leakM3PerS * freeAirMolPerM3 * sonicShare(state.last.separatorPa, inputs.ambientPa);
  const gasM3 = separatorGasM3(parameters, state);
  const held = vacuumBleedMolPerS(parameters, state, inputs, gasM3);
  state.last.vacuumBleedM3PerS = held / freeAirMolPerM3;
  const bleed = held + ventedMolPerS(state, inputs, gasM3, dtS);
  const exhaust = stepVacuumSource(parameters, state, inputs, dtS);
  state.separatorGasMol += (intoMolPerS + inLeak + bleed - exhaust) * dtS;
  state.sums.gasInMol += (inLeak + bleed + Math.max(0, -exhaust)) * dtS;
  state.sums.gasOutMol += Math.max(0, exhaust) * dtS;
  return exhaust;
}

function ventedMolPerS(state: PlantState, inputs: PlantInputs, gasM3: number, dtS: number): number {
  if (!inputs.orders.vented) return 0;
  const missingPa = inputs.ambientPa - state.last.separatorPa;
  return Math.max(0, (missingPa * gasM3) / (gasConstant * (state.separatorC + 273.15) * (ventedS + dtS)));
}

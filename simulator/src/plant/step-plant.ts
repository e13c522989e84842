import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { mixedC } from './cell';
import { stepDissolvedAir } from './dissolved-air';
import { stepExchanger } from './heat-exchanger';
import { solveFlows } from './loop-hydraulics';
import { stepReturnMain, stepSupplyMain } from './mains';
import { separatorGasM3, separatorPressurePa, stepSeparatorWater } from './separator';
import { stepRacks } from './step-racks';
import { regulateSupplyTank, stepSupplyTankWater, supplyTankPressurePa } from './supply-tank';
import { pumpHeatKM3, stepTransferPump } from './transfer-pump';
import { stepVacuumSource, vacuumBleedMolPerS } from './vacuum-source';
import { stepValve } from './valve-control';
import { freeAirMolPerM3 } from './water';

/** Longest step that keeps the promise on accuracy, s. */
export const longestStepS = 0.1;

/**
 * One step of a unit and its loop, in place. The water is followed in the direction it flows, so that what
 * leaves one part enters the next with the same temperature; all exchanges are counted once on each side.
 */
export function stepPlant(parameters: PlantParameters, state: PlantState, inputs: PlantInputs, dtS: number): void {
  const { last } = state;
  solveFlows(parameters, state, inputs, dtS);
  stepTransferPump(parameters, state, dtS);
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
  stepValve(parameters, state, dtS);
  stepSupplyMain(parameters, state, state.supplyTankC, dtS);
  const racks = stepRacks(parameters, state, inputs, dtS);
  const back = stepReturnMain(parameters, state, racks, dtS);
  stepSeparatorWater(state, back, dtS);

  const gas = regulateSupplyTank(parameters, state, inputs.ambientPa, dtS);
  const inLeak = (parameters.baseInLeakFreeM3PerS + inputs.inLeakFreeM3PerS) * freeAirMolPerM3;
  const bleed = vacuumBleedMolPerS(parameters, state, separatorGasM3(parameters, state));
  const exhaust = stepVacuumSource(parameters, state, dtS);
  state.separatorGasMol += (back.gasMolPerS + gas.reliefMolPerS + inLeak + bleed - exhaust) * dtS;
  state.sums.gasInMol += (inLeak + bleed) * dtS;
  state.sums.gasOutMol += exhaust * dtS;
  stepDissolvedAir(parameters, state, dtS);

  last.supplyTankPa = supplyTankPressurePa(parameters, state);
  last.separatorPa = separatorPressurePa(parameters, state);
  state.timeS += dtS;
}

import { mixedC } from '../cell';
import { stepDissolvedAir } from '../dissolved-air';
import { stepExchanger } from '../heat-exchanger';
import { stepReturnMain, stepSupplyMain } from '../mains';
import type { PlantInputs } from '../plant-inputs';
import type { PlantParameters } from '../plant-parameters';
import type { PlantState } from '../plant-state';
import { rackPaths } from '../rack-path';
import { separatorPressurePa, stepCarryOver, stepSeparatorWater } from '../separator';
import { stepSeparatorGas } from '../step-plant';
import type { RackOutflow } from '../step-racks';
import { regulateSupplyTank, stepSupplyTankWater, supplyTankPressurePa } from '../supply-tank';
import { pumpHeatKM3, stepTransferPump } from '../transfer-pump';
import { stepValve } from '../valve-control';
import { stepWaterInAndOut } from '../water-in-and-out';
import { joinedInputs } from './joined-inputs';
import type { HeaderCondition, SharedLoopState } from './shared-loop-state';
import { sharedRacksType } from './shared-loop-type';
import { moveStopValve, solveSharedFlows } from './solve-shared-flows';
import { stepSharedRacks } from './step-shared-racks';

/** One unit on the loop: what it is made of, what moves it, and what is wrong at its end of the header. */
export interface SharedUnit {
  readonly parameters: PlantParameters;
  readonly inputs: PlantInputs;
  readonly header: HeaderCondition;
}

/** One step of all units of a loop and the racks between them, in place. Spills of open hoses are not modelled here. */
export function stepSharedLoop(units: readonly SharedUnit[], state: SharedLoopState, dtS: number): void {
  const inputs = joinedInputs(units.map((unit) => unit.inputs));
  const paths = rackPaths(sharedRacksType, state.racks, inputs);
  state.units.forEach((unit, i) => moveStopValve(unit, (units[i] as SharedUnit).inputs, dtS));
  const flows = solveSharedFlows(
    units.map(({ parameters }) => parameters),
    state,
    units.map(({ header }) => header),
    paths,
  );
  state.units.forEach((unit, i) => {
    supplySide(units[i] as SharedUnit, unit, flows.supply[i] ?? 0, state.racks.supplyMainC[0] ?? 0, dtS);
  });
  const out = stepSharedRacks(state, inputs, paths, flows, dtS);
  const returned = flows.return.reduce((sum, flow) => sum + flow, 0);
  state.units.forEach((unit, i) => {
    const share = returned > 0 ? (flows.return[i] ?? 0) / returned : 1 / units.length;
    returnSide(units[i] as SharedUnit, unit, part(out, share), flows.return[i] ?? 0, dtS);
  });
  state.racks.timeS += dtS;
}

const part = (out: RackOutflow, share: number): RackOutflow => ({
  ...out,
  waterM3PerS: out.waterM3PerS * share,
  gasMolPerS: out.gasMolPerS * share,
});

/** Pump, exchanger, supply tank and supply main. Water that comes back goes from the header into the tank. */
function supplySide(
  { parameters, inputs }: SharedUnit,
  unit: PlantState,
  flow: number,
  headerC: number,
  dtS: number,
): void {
  const { last } = unit;
  stepTransferPump(parameters, unit, inputs, dtS);
  const inM3 = last.transferM3PerS * dtS;
  const pumpHeat = pumpHeatKM3(parameters, unit, dtS);
  unit.pumpLineC = mixedC(parameters.volumeM3.unit / 2, unit.pumpLineC, inM3, unit.separatorC, pumpHeat);
  const cooledC = stepExchanger(parameters, unit, inputs, dtS);
  last.loopFlowM3PerS = Math.max(0, flow);
  stepSupplyTankWater(unit, cooledC, dtS);
  const backM3 = Math.max(0, -flow) * dtS;
  unit.supplyTankC = mixedC(unit.supplyTankWaterM3, unit.supplyTankC, backM3, headerC);
  unit.supplyTankWaterM3 += backM3;
  stepValve(parameters, unit, inputs, dtS);
  stepSupplyMain(parameters, unit, unit.supplyTankC, dtS);
}

/** Return main, separator and vacuum source. */
function returnSide(
  { parameters, inputs }: SharedUnit,
  unit: PlantState,
  out: RackOutflow,
  flow: number,
  dtS: number,
): void {
  const { last } = unit;
  const main = parameters.lossPa.main / parameters.ratedFlowM3PerS ** 2;
  last.returnMainLossPa = main * flow * (flow + last.returnMainGasM3PerS);
  const back = stepReturnMain(parameters, unit, out, dtS);
  stepSeparatorWater(parameters, unit, back, dtS);
  stepWaterInAndOut(parameters, unit, inputs, dtS);
  stepCarryOver(parameters, unit, dtS);
  const { reliefMolPerS } = regulateSupplyTank(parameters, unit, inputs, dtS);
  stepSeparatorGas(parameters, unit, inputs, back.gasMolPerS + reliefMolPerS, dtS);
  stepDissolvedAir(parameters, unit, dtS);
  last.supplyTankPa = supplyTankPressurePa(parameters, unit);
  last.separatorPa = separatorPressurePa(parameters, unit);
  unit.timeS += dtS;
}

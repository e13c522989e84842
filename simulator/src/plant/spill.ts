import { openHose, type PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import { mainCells, type PlantState, type RackState } from './plant-state';
import { supplySurfaceM } from './loop-hydraulics';
import { gasSpaceMol, headPaPerM, waterDensityKgPerM3 } from './water';
import { countWaterOut, takeFromSupplyTank } from './water-out';

/** Discharge coefficient of a torn hose for water. Common practice, 0.6. */
const dischargeCoefficient = 0.6;
/** Water below a rack dries within, s: an hour, an estimate. */
const dryingS = 3600;
/** The last of a main stays in its low places. */
const lastShare = 0.1;

/** Water that comes out of open hoses where the inside stands above ambient pressure. */
export function stepSpills(parameters: PlantParameters, state: PlantState, inputs: PlantInputs, dtS: number): void {
  for (let r = 0; r < parameters.racks; r += 1) {
    const rack = state.racks[r] as RackState;
    if (rack.wetM3 > 0) rack.wetM3 *= 1 - dtS / dryingS;
    if (inputs.orders.isolated[r]) continue;
    const cutM = inputs.condition.mainCutBoreM[r] ?? 0;
    const opening = openHose(inputs, r);
    if (cutM > 0) {
      spillReturn(parameters, state, inputs, rack, cutM, parameters.elevationM.floorMain, dtS);
      const headM = supplySurfaceM(parameters, state) - parameters.elevationM.floorMain;
      const floorPa = state.last.supplyTankPa + headM * headPaPerM - mainLossPa(parameters, state);
      spillSupply(parameters, state, inputs, rack, floorPa, cutM, dtS);
    } else if (opening) {
      spillReturn(parameters, state, inputs, rack, opening.boreM, parameters.elevationM.rackReturnTap, dtS);
      const boreM = Math.min(opening.boreM, parameters.boreM.restrictor);
      spillSupply(parameters, state, inputs, rack, rack.supplyManifoldPa, boreM, dtS);
    }
  }
}

/** The return main over a low opening: separator pressure and the head of its water, which gas makes lighter. */
function spillReturn(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  rack: RackState,
  boreM: number,
  elevationM: number,
  dtS: number,
): void {
  const mainM3 = parameters.volumeM3.returnMain;
  let gasM3 = 0;
  for (const cellM3 of state.returnMainGasM3) gasM3 += cellM3;
  const waterShare = 1 - gasM3 / mainM3;
  const headPa = Math.max(0, parameters.elevationM.returnInlet - elevationM) * headPaPerM * waterShare;
  const overPa = state.last.separatorPa + headPa - inputs.ambientPa;
  if (overPa <= 0 || waterShare <= lastShare) return;
  const share = Math.min(0.05, (orificeM3PerS(boreM, overPa) * dtS) / (mainM3 * waterShare));
  for (let i = 0; i < mainCells; i += 1) {
    const waterM3 = mainM3 / mainCells - (state.returnMainGasM3[i] as number);
    const outM3 = share * waterM3;
    const outC = state.returnMainC[i] as number;
    countWaterOut(parameters, state, outM3, outC);
    // room air takes its place
    const airMol = Math.max(0, gasSpaceMol(state.last.separatorPa, outM3, outC));
    state.returnMainGasMol[i] = (state.returnMainGasMol[i] as number) + airMol;
    state.returnMainGasM3[i] = (state.returnMainGasM3[i] as number) + outM3;
    state.sums.gasInMol += airMol;
    rack.wetM3 += outM3;
  }
}

/** The supply side pushes water out by the inlet once it stands above ambient pressure itself. */
function spillSupply(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  rack: RackState,
  insidePa: number,
  boreM: number,
  dtS: number,
): void {
  const overPa = insidePa - inputs.ambientPa;
  if (overPa <= 0 || state.loopValve === 0) return;
  const keptM3 = lastShare * parameters.volumeM3.supplyTankWater;
  const outM3 = Math.min(orificeM3PerS(boreM, overPa) * dtS, Math.max(0, state.supplyTankWaterM3 - keptM3));
  takeFromSupplyTank(parameters, state, outM3);
  rack.wetM3 += outM3;
}

function mainLossPa({ lossPa, ratedFlowM3PerS }: PlantParameters, state: PlantState): number {
  return lossPa.main * (state.last.loopFlowM3PerS / ratedFlowM3PerS) ** 2;
}

function orificeM3PerS(boreM: number, overPa: number): number {
  const areaM2 = (Math.PI / 4) * boreM * boreM;
  return dischargeCoefficient * areaM2 * Math.sqrt((2 * overPa) / waterDensityKgPerM3);
}

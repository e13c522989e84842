import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { mainCells } from './plant-state';
import type { RackOutflow } from './step-racks';
import { gasRoomM3, heldAfter, mixedC } from './cell';
import { bubbleVolumeM3 } from './water';

/** What the return main gives to the separator in a step. */
export interface ReturnOutflow {
  waterM3PerS: number;
  waterC: number;
  gasMolPerS: number;
}

/** The supply main: cells of water pushed along, a transport delay with some mixing. Call after the racks took from its end. */
export function stepSupplyMain(parameters: PlantParameters, state: PlantState, feedC: number, dtS: number): void {
  const cellM3 = parameters.volumeM3.supplyMain / mainCells;
  const inM3 = state.last.loopFlowM3PerS * dtS;
  let upC = feedC;
  for (let i = 0; i < mainCells; i += 1) {
    const nowC = mixedC(cellM3, state.supplyMainC[i] as number, inM3, upC);
    state.supplyMainC[i] = nowC;
    upC = nowC;
  }
}

/**
 * The return main: gas and water of a cell leave it at one speed (no slip), and gas that comes in pushes
 * water on. The surge of pushed water is given no friction and no
 * inertia of its own, and gas in the riser does not lighten it.
 */
export function stepReturnMain(
  parameters: PlantParameters,
  state: PlantState,
  racks: RackOutflow,
  dtS: number,
): ReturnOutflow {
  const cellM3 = parameters.volumeM3.returnMain / mainCells;
  const meanPa = state.last.separatorPa + state.last.returnMainLossPa / 2;
  const speed = racks.waterM3PerS + bubbleVolumeM3(racks.gasMolPerS, meanPa, racks.waterC);
  let water = racks.waterM3PerS;
  let waterC = racks.waterC;
  let gas = racks.gasMolPerS;
  let passing = 0;
  for (let i = 0; i < mainCells; i += 1) {
    const heldMol = state.returnMainGasMol[i] as number;
    const nowMol = heldAfter(heldMol, gas, speed, cellM3, dtS);
    const beforeM3 = state.returnMainGasM3[i] as number;
    const nowM3 = gasRoomM3(nowMol, meanPa, waterC, cellM3, beforeM3, water, dtS);
    waterC = mixedC(cellM3 - beforeM3, state.returnMainC[i] as number, water * dtS, waterC);
    water += (nowM3 - beforeM3) / dtS;
    gas += (heldMol - nowMol) / dtS;
    passing += gas;
    state.returnMainC[i] = waterC;
    state.returnMainGasMol[i] = nowMol;
    state.returnMainGasM3[i] = nowM3;
  }
  state.last.returnMainGasM3PerS = bubbleVolumeM3(passing / mainCells, meanPa, waterC);
  return { waterM3PerS: water, waterC, gasMolPerS: gas };
}

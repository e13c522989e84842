import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState, RackState } from './plant-state';
import { gasRoomM3, mixedC } from './cell';
import { heatRackChips } from './chips';
import { stepBlindPocket } from './blind-pocket';
import { bubbleC, moveRackGas } from './rack-gas';
import { waterHeatJPerM3K } from './water';

/** What the racks give to the return main in a step. */
export interface RackOutflow {
  waterM3PerS: number;
  waterC: number;
  gasMolPerS: number;
}

/** One step of every rack: gas, water and chips. The supply main's last cell feeds them. */
export function stepRacks(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  dtS: number,
): RackOutflow {
  const feedC = state.supplyMainC[state.supplyMainC.length - 1] as number;
  const half = parameters.volumeM3.rack / 2;
  const cell = half / 2;
  let water = 0;
  let heat = 0;
  let gas = 0;
  state.last.chipHeatW = 0;
  for (let r = 0; r < parameters.racks; r += 1) {
    const rack = state.racks[r] as RackState;
    gas += moveRackGas(parameters, state, rack, inputs, r, dtS);
    const gasC = bubbleC(state, rack);
    const inlet = half - rack.supplyGasM3;
    const outlet = half - rack.returnGasM3 - rack.shortM3;
    const supplyGas = gasRoomM3(
      rack.supplyGasMol,
      rack.supplyManifoldPa,
      gasC,
      cell,
      rack.supplyGasM3,
      rack.flowM3PerS,
      dtS,
    );
    const onM3PerS = rack.flowM3PerS + (supplyGas - rack.supplyGasM3) / dtS;
    rack.supplyGasM3 = supplyGas;
    const returnGas = gasRoomM3(rack.returnGasMol, rack.returnManifoldPa, gasC, cell, rack.returnGasM3, onM3PerS, dtS);
    let outM3PerS = onM3PerS + (returnGas - rack.returnGasM3) / dtS;
    rack.returnGasM3 = returnGas;
    if (rack.shortM3 > 0 && !inputs.orders.isolated[r]) {
      // what the pocket pressed out is filled up before water goes on
      const filled = Math.min(rack.shortM3, Math.max(0, outM3PerS) * dtS);
      rack.shortM3 -= filled;
      outM3PerS -= filled / dtS;
    }
    rack.inletC = mixedC(inlet, rack.inletC, rack.flowM3PerS * dtS, feedC);
    const heatW = heatRackChips(parameters, state, rack, inputs, r, dtS);
    rack.outletC = mixedC(outlet, rack.outletC, onM3PerS * dtS, rack.inletC, (heatW * dtS) / waterHeatJPerM3K);
    if (rack.flowM3PerS === 0) convect(rack, inlet, outlet, dtS);
    stepBlindPocket(parameters, state, inputs, r, heatW, dtS);
    water += outM3PerS;
    heat += outM3PerS * rack.outletC;
  }
  return { waterM3PerS: water, waterC: water > 0 ? heat / water : feedC, gasMolPerS: gas };
}

/** Water that stands in a rack turns over by its own warmth, so that its two halves come to one temperature within, s. An estimate. */
const convectionS = 120;

function convect(rack: RackState, inletM3: number, outletM3: number, dtS: number): void {
  const bothC = (inletM3 * rack.inletC + outletM3 * rack.outletC) / (inletM3 + outletM3);
  const share = dtS / (convectionS + dtS);
  rack.inletC += (bothC - rack.inletC) * share;
  rack.outletC += (bothC - rack.outletC) * share;
}

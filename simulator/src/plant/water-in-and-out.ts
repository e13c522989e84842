import { mixedC } from './cell';
import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { saltsWithWater } from './salts';
import { waterHeatJPerM3K } from './water';
import { takeFromSeparator, takeFromSupplyTank } from './water-out';

/** Treated water stands in the room's store at about this temperature, °C. */
const topUpC = 20;
/** A tank gives no more to a drain or a leak below this share of its usual water. */
const lastShare = 0.05;

/** Water by top-up, pinhole, leak and drain in a step. */
export function stepWaterInAndOut(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  dtS: number,
): void {
  const { orders, condition } = inputs;
  const topUpM3 = (orders.fillM3PerS + condition.overfillM3PerS) * dtS;
  if (topUpM3 > 0) {
    state.separatorC = mixedC(state.separatorWaterM3, state.separatorC, topUpM3, topUpC);
    state.separatorWaterM3 += topUpM3;
    state.topUpM3 += topUpM3;
    countIn(state, topUpM3, topUpC);
  }
  const pinholeM3 = condition.pinholeM3PerS * dtS;
  if (pinholeM3 > 0) {
    state.supplyTankC = mixedC(state.supplyTankWaterM3, state.supplyTankC, pinholeM3, inputs.facilitySupplyC);
    state.supplyTankWaterM3 += pinholeM3;
    countIn(state, pinholeM3, inputs.facilitySupplyC);
  }
  saltsWithWater(state, topUpM3, pinholeM3);
  loseAndDrain(parameters, state, inputs, dtS);
}

function countIn(state: PlantState, inM3: number, inC: number): void {
  state.sums.waterInM3 += inM3;
  state.sums.waterHeatJ += inM3 * inC * waterHeatJPerM3K;
}

function loseAndDrain(parameters: PlantParameters, state: PlantState, inputs: PlantInputs, dtS: number): void {
  const { condition, orders } = inputs;
  const wantedM3 = (condition.waterLossM3PerS + orders.drainM3PerS) * dtS;
  if (wantedM3 <= 0) return;
  const { separatorWater, supplyTankWater } = parameters.volumeM3;
  const fromSeparator = Math.min(wantedM3, Math.max(0, state.separatorWaterM3 - lastShare * separatorWater));
  takeFromSeparator(parameters, state, fromSeparator);
  // a drain takes the supply tank too, a leak of the pump line does not
  const more = Math.min(orders.drainM3PerS * dtS, wantedM3 - fromSeparator);
  takeFromSupplyTank(
    parameters,
    state,
    Math.min(more, Math.max(0, state.supplyTankWaterM3 - lastShare * supplyTankWater)),
  );
  if (condition.lossInTray) state.trayM3 += Math.min(fromSeparator, condition.waterLossM3PerS * dtS);
}

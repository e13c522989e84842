import { returnTapPa } from './loop-hydraulics';
import { openHose, type PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState, RackState } from './plant-state';
import { fullestShare, heldAfter } from './cell';
import { openingMolPerS } from './opening-flow';
import { bubbleVolumeM3 } from './water';

/** How long the gas of a locked supply manifold takes out through the servers, s. */
const purgeS = 6;
/** Below this much gas a manifold counts as full of water, mol. */
const traceMol = 1e-7;

/**
 * Gas of one rack over a step: in through an opening, out with the water.
 * @returns mol/s into the return main.
 */
export function moveRackGas(
  parameters: PlantParameters,
  state: PlantState,
  rack: RackState,
  inputs: PlantInputs,
  index: number,
  dtS: number,
): number {
  // shut valves: the gas stays where it is
  if (inputs.orders.isolated[index]) return 0;
  const cutM = inputs.condition.mainCutBoreM[index] ?? 0;
  if (cutM > 0) return throughCutMain(parameters, state, rack, inputs, cutM, dtS);
  const opening = openHose(inputs, index);
  if (opening === null && rack.returnGasMol + rack.supplyGasMol < traceMol) return dropTrace(rack, dtS);
  let intoReturn = 0;
  let intoSupply = 0;
  if (opening) {
    intoReturn = openingMolPerS(opening.boreM, rack.returnManifoldPa, inputs.ambientPa, inputs.hallC);
    if (opening.checkValveStuckOpen) {
      const bore = Math.min(opening.boreM, parameters.boreM.restrictor);
      intoSupply = openingMolPerS(bore, rack.supplyManifoldPa, inputs.ambientPa, inputs.hallC);
    }
    state.sums.gasInMol += (intoReturn + intoSupply) * dtS;
  }
  const cellM3 = parameters.volumeM3.rack / 4;
  const gasC = bubbleC(state, rack);
  const through = throughServers(rack, intoSupply, cellM3, dtS);
  const intoMol = intoReturn + through;
  const speed = rack.flowM3PerS + bubbleVolumeM3(intoMol, rack.returnManifoldPa, gasC);
  const now = heldAfter(rack.returnGasMol, intoMol, speed, cellM3, dtS);
  const outMol = intoMol + (rack.returnGasMol - now) / dtS;
  rack.returnGasMol = now;
  const meanPa = (rack.returnManifoldPa + state.last.separatorPa + state.last.returnMainLossPa) / 2;
  rack.returnGasM3PerS = bubbleVolumeM3(outMol, meanPa, gasC);
  return outMol;
}

/** The rack's return hose is off: room air goes straight into the return main, the rack's own gas stays. */
function throughCutMain(
  parameters: PlantParameters,
  state: PlantState,
  rack: RackState,
  inputs: PlantInputs,
  boreM: number,
  dtS: number,
): number {
  const molPerS = openingMolPerS(boreM, returnTapPa(parameters, state), inputs.ambientPa, inputs.hallC);
  state.sums.gasInMol += molPerS * dtS;
  rack.returnGasM3PerS = 0;
  return molPerS;
}

/** Room air is in the rack too briefly to take up the vapour of standing, overheated water. */
export function bubbleC(state: PlantState, rack: RackState): number {
  return Math.min(rack.outletC, state.separatorC);
}

/** Gas from the supply manifold on through the servers, mol/s: slowly, but what a full manifold cannot hold goes at once. */
function throughServers(rack: RackState, intoMolPerS: number, cellM3: number, dtS: number): number {
  const fullMol = rack.supplyGasM3 > 0 ? (rack.supplyGasMol * fullestShare * cellM3) / rack.supplyGasM3 : Infinity;
  const before = rack.supplyGasMol;
  rack.supplyGasMol = Math.min((before + intoMolPerS * dtS) / (1 + dtS / purgeS), Math.max(fullMol, before));
  return intoMolPerS + (before - rack.supplyGasMol) / dtS;
}

/** The last trace goes on with the water, so that the sums stay whole. */
function dropTrace(rack: RackState, dtS: number): number {
  const trace = rack.returnGasMol + rack.supplyGasMol;
  rack.returnGasMol = 0;
  rack.supplyGasMol = 0;
  rack.returnGasM3PerS = 0;
  return trace / dtS;
}

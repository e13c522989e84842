import type { PlantInputs } from '../plant-inputs';
import type { PlantState, RackState } from '../plant-state';
import { flowOf, hoseFactor, type RackPaths } from '../rack-path';
import { stepRacks, type RackOutflow } from '../step-racks';
import { headPaPerM } from '../water';
import type { SharedFlows, SharedLoopState } from './shared-loop-state';
import { sharedRacksType } from './shared-loop-type';

/** The return manifold's pressure follows its gas so late, s. */
const manifoldLagS = 0.15;

/** The racks between the headers over a step, fed by what the units give. */
export function stepSharedRacks(
  state: SharedLoopState,
  inputs: PlantInputs,
  paths: RackPaths,
  flows: SharedFlows,
  dtS: number,
): RackOutflow {
  const { racks, units } = state;
  storePressures(state, paths, inputs, dtS);
  racks.supplyMainC.fill(feedC(units, flows, racks));
  const takers = units.filter((_unit, i) => (flows.return[i] ?? 0) > 0);
  const among = takers.length > 0 ? takers : units;
  racks.separatorC = among.reduce((sum, unit) => sum + unit.separatorC, 0) / among.length;
  racks.last.separatorPa = state.returnHeaderPa;
  racks.last.returnMainLossPa = 0;
  return stepRacks(sharedRacksType, racks, inputs, dtS);
}

/** Temperature of the supply header: what the units give, mixed. */
function feedC(units: readonly PlantState[], { supply }: SharedFlows, racks: PlantState): number {
  let flow = 0;
  let heat = 0;
  units.forEach((unit, i) => {
    const given = Math.max(0, supply[i] ?? 0);
    flow += given;
    heat += given * (unit.supplyMainC[unit.supplyMainC.length - 1] ?? 0);
  });
  return flow > 0 ? heat / flow : (racks.supplyMainC[0] ?? 0);
}

function storePressures(state: SharedLoopState, paths: RackPaths, inputs: PlantInputs, dtS: number): void {
  const { elevationM, racks: count } = sharedRacksType;
  const tapPa = (elevationM.returnInlet - elevationM.rackReturnTap) * headPaPerM;
  const hose = hoseFactor(sharedRacksType);
  let sum = 0;
  for (let r = 0; r < count; r += 1) {
    const rack = state.racks.racks[r] as RackState;
    const q = flowOf(paths, r, state.supplyHeaderPa - state.returnHeaderPa);
    rack.flowM3PerS = q;
    sum += q;
    if (inputs.orders.isolated[r]) continue;
    rack.supplyManifoldPa = state.supplyHeaderPa + tapPa - hose * q * q;
    const frictionPa = hose * q * (q + rack.returnGasM3PerS) + (paths.gasOnlyPa[r] ?? 0);
    const manifoldPa = state.returnHeaderPa + tapPa + frictionPa;
    rack.returnManifoldPa += ((manifoldPa - rack.returnManifoldPa) * dtS) / (manifoldLagS + dtS);
  }
  state.racks.last.loopFlowM3PerS = sum;
}

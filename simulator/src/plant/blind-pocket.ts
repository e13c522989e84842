import { openHose, type PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState, RackState } from './plant-state';
import { bubbleVolumeM3, waterHeatJPerM3K } from './water';
import { countWaterOut } from './water-out';

/** Expansion of water near 40 °C, 1/K. Source: IAPWS SR6-08, rounded. */
const expansionPerK = 3.9e-4;
/** How hoses give way: the volume of the rack grows so much, 1/Pa. An estimate: 60 mL in 15 L for 100 kPa. */
const hosesPerPa = 4e-8;
/** Couplings above ambient pressure weep: share of the rack's volume a second and Pa. An estimate. */
const weepPerSPa = 1e-9;
/** An open hose brings a pocket to ambient pressure within, s. */
const openS = 2;

/**
 * A rack between two shut valves: no suction reaches it. Its chips warm the trapped water, which expands, presses on
 * the hoses and on trapped gas, and weeps once it stands above ambient pressure. `heatW` went into its water in this step.
 */
export function stepBlindPocket(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  index: number,
  heatW: number,
  dtS: number,
): void {
  if (!inputs.orders.isolated[index]) return;
  const rack = state.racks[index] as RackState;
  const rackM3 = parameters.volumeM3.rack;
  const meanPa = (rack.supplyManifoldPa + rack.returnManifoldPa) / 2;
  const grownM3 = (expansionPerK * heatW * dtS) / waterHeatJPerM3K;
  const gasPerPa = bubbleVolumeM3(rack.supplyGasMol + rack.returnGasMol, meanPa, rack.outletC) / meanPa;
  const open = openHose(inputs, index) !== null;
  const overPa = meanPa - inputs.ambientPa;
  const outM3 = Math.max(0, open ? grownM3 : rackM3 * weepPerSPa * overPa * dtS);
  const risenPa = (grownM3 - outM3) / (rackM3 * hosesPerPa + gasPerPa);
  const pocketPa = open ? meanPa - (overPa * dtS) / (openS + dtS) : Math.max(1000, meanPa + risenPa);
  rack.supplyManifoldPa = pocketPa;
  rack.returnManifoldPa = pocketPa;
  if (outM3 <= 0) return;
  countWaterOut(parameters, state, outM3, rack.outletC);
  rack.shortM3 += outM3;
  rack.wetM3 += outM3;
}

import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState, RackState } from './plant-state';
import { rackPaths, flowOf, hoseFactor, type RackPaths } from './rack-path';
import { headPaPerM } from './water';

/** The return manifold's pressure follows its gas so late, s: gas is springy and water has mass. */
const manifoldLagS = 0.15;

/** After a power failure: shares of the supply tank's usual water between which it is filled before the loop opens. */
const refillBelow = 0.8;
const refillUpTo = 0.95;

/** The unit's own controls call it a return of power until the loop has had its flow for so long, s. Invented. */
const returnS = 30;
const fullFlowShare = 0.8;

/** Stroke of the stop valve below the supply tank, s. */
const loopValveS = 3;

/** What moves the water: supply tank over separator, counted at one height, Pa. */
export function drivingPressurePa(parameters: PlantParameters, state: PlantState): number {
  const { elevationM } = parameters;
  const head = (supplySurfaceM(parameters, state) - elevationM.returnInlet) * headPaPerM;
  return state.last.supplyTankPa - state.last.separatorPa + head;
}

export function supplySurfaceM(parameters: PlantParameters, state: PlantState): number {
  const { volumeM3, elevationM } = parameters;
  return elevationM.supplySurface + (state.supplyTankWaterM3 - volumeM3.supplyTankWater) / volumeM3.supplyTankAreaM2;
}

/** Pressure of the return main where the racks join it, Pa, without the head of its riser's gas. */
export function returnTapPa(parameters: PlantParameters, state: PlantState): number {
  const { elevationM } = parameters;
  const tapHead = (elevationM.returnInlet - elevationM.rackReturnTap) * headPaPerM;
  return state.last.separatorPa + tapHead + state.last.returnMainLossPa;
}

/**
 * Quasi-static flows: racks in parallel between two mains, each a hose, its servers and a return in which
 * gas and water move together. Finds the loop flow at which the racks take what the mains carry, and leaves
 * flows and pressures in the state.
 */
export function solveFlows(parameters: PlantParameters, state: PlantState, inputs: PlantInputs, dtS: number): void {
  const { ratedFlowM3PerS: rated, lossPa } = parameters;
  moveLoopValve(parameters, state, inputs, dtS);
  const driving = drivingPressurePa(parameters, state) * outletShare(parameters, state) * state.loopValve;
  const mainFactor = lossPa.main / (rated * rated);
  const gas = state.last.returnMainGasM3PerS;
  const paths = rackPaths(parameters, state, inputs);
  const taken = (flow: number): number => {
    const left = driving - mainFactor * flow * (2 * flow + gas);
    let sum = 0;
    for (let r = 0; r < parameters.racks; r += 1) sum += flowOf(paths, r, left);
    return sum;
  };
  const flow = driving > 0 ? balance(taken, state.last.loopFlowM3PerS, rated) : 0;
  storePressures(parameters, state, inputs, paths, flow, driving, dtS);
}

/** The stop valve stays where it is without power; when that returns to a tank that ran down, it shuts until the tank is full again. */
function moveLoopValve(parameters: PlantParameters, state: PlantState, inputs: PlantInputs, dtS: number): void {
  const filled = state.supplyTankWaterM3 / parameters.volumeM3.supplyTankWater;
  if (inputs.condition.powerLost) {
    state.refilling = filled < refillBelow;
    state.returningS = returnS;
    return;
  }
  if (state.last.loopFlowM3PerS > fullFlowShare * parameters.ratedFlowM3PerS) {
    state.returningS = Math.max(0, state.returningS - dtS);
  }
  if (filled > refillUpTo) state.refilling = false;
  const reach = dtS / loopValveS;
  const way = (inputs.orders.loopOpen && !state.refilling ? 1 : 0) - state.loopValve;
  state.loopValve += Math.min(reach, Math.max(-reach, way));
}

/** A tank that runs empty draws gas with its last water: the outlet gives less and less from 15 % down to 2 % of the usual water. */
function outletShare(parameters: PlantParameters, state: PlantState): number {
  const share = state.supplyTankWaterM3 / parameters.volumeM3.supplyTankWater;
  return Math.min(1, Math.max(0, (share - 0.02) / 0.13));
}

/** Falling function `taken(flow) − flow`: its zero, by secant steps inside a bracket. */
function balance(taken: (flow: number) => number, guess: number, rated: number): number {
  let low = 0;
  let high = 3 * rated;
  if (taken(0) <= 0) return 0;
  let flow = Math.min(Math.max(guess, 1e-3 * rated), high);
  for (let i = 0; i < 40; i += 1) {
    const excess = taken(flow) - flow;
    if (excess > 0) low = flow;
    else high = flow;
    if (Math.abs(excess) < 1e-9 * rated) break;
    const probe = 1e-4 * rated;
    const slope = (taken(flow + probe) - (flow + probe) - excess) / probe;
    const next = flow - excess / Math.min(slope, -1);
    flow = next > low && next < high ? next : (low + high) / 2;
  }
  return flow;
}

function storePressures(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  paths: RackPaths,
  flow: number,
  driving: number,
  dtS: number,
): void {
  const { ratedFlowM3PerS: rated, lossPa, elevationM } = parameters;
  const mainFactor = lossPa.main / (rated * rated);
  const supplyLoss = mainFactor * flow * flow;
  state.last.returnMainLossPa = mainFactor * flow * (flow + state.last.returnMainGasM3PerS);
  const hose = hoseFactor(parameters);
  const supplyHead = (supplySurfaceM(parameters, state) - elevationM.rackReturnTap) * headPaPerM;
  const supplyTapPa = state.last.supplyTankPa + supplyHead - supplyLoss;
  const tapPa = returnTapPa(parameters, state);
  const left = driving - supplyLoss - state.last.returnMainLossPa;
  let sum = 0;
  for (let r = 0; r < parameters.racks; r += 1) {
    const rack = state.racks[r] as RackState;
    const q = flow > 0 ? flowOf(paths, r, left) : 0;
    rack.flowM3PerS = q;
    sum += q;
    // a valved-off rack keeps a pressure of its own
    if (inputs.orders.isolated[r]) continue;
    const cut = (inputs.condition.mainCutBoreM[r] ?? 0) > 0;
    rack.supplyManifoldPa = cut ? Math.max(inputs.ambientPa, supplyTapPa) : supplyTapPa - hose * q * q;
    const frictionPa = hose * q * (q + rack.returnGasM3PerS) + (paths.gasOnlyPa[r] ?? 0);
    const manifoldPa = cut ? Math.max(inputs.ambientPa, tapPa) : tapPa + frictionPa;
    rack.returnManifoldPa += ((manifoldPa - rack.returnManifoldPa) * dtS) / (manifoldLagS + dtS);
  }
  state.last.loopFlowM3PerS = sum;
}

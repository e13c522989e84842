import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState, RackState } from './plant-state';
import { fullestShare } from './cell';
import { bubbleVolumeM3, headPaPerM } from './water';

/** The return manifold's pressure follows its gas so late, s: gas is springy and water has mass. */
const manifoldLagS = 0.15;

/** A supply manifold so far filled with gas gives its servers no water any more. */
const lockedShare = 0.85;

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

/**
 * Quasi-static flows: racks in parallel between two mains, each a hose, its servers and a return in which
 * gas and water move together. Finds the loop flow at which the racks take what the mains carry, and leaves
 * flows and pressures in the state.
 */
export function solveFlows(parameters: PlantParameters, state: PlantState, inputs: PlantInputs, dtS: number): void {
  const { ratedFlowM3PerS: rated, lossPa, racks } = parameters;
  const driving = drivingPressurePa(parameters, state) * outletShare(parameters, state);
  const mainFactor = lossPa.main / (rated * rated);
  const gas = state.last.returnMainGasM3PerS;
  const taken = (flow: number): number => {
    const left = driving - mainFactor * flow * flow - mainFactor * flow * (flow + gas);
    let sum = 0;
    for (let r = 0; r < racks; r += 1) sum += rackFlow(parameters, state.racks[r] as RackState, inputs, r, left);
    return sum;
  };
  const flow = driving > 0 ? balance(taken, state.last.loopFlowM3PerS, rated) : 0;
  storePressures(parameters, state, inputs, flow, driving, dtS);
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

/** Share of a rack's servers whose water still runs, and of its supply manifold that gas has not filled. */
function openShare(parameters: PlantParameters, rack: RackState, inputs: PlantInputs, index: number): number {
  const whole = inputs.opening[index] ? 1 - 1 / parameters.serversPerRack : 1;
  const manifoldM3 = parameters.volumeM3.rack / 4;
  if (rack.supplyGasMol === 0) return whole;
  const gasM3 = bubbleVolumeM3(rack.supplyGasMol, rack.supplyManifoldPa, rack.inletC);
  return whole * Math.max(0, 1 - gasM3 / (lockedShare * fullestShare * manifoldM3));
}

/** Water through one rack at a pressure difference between the mains: the root of a quadratic, as the return carries gas too. */
function rackFlow(
  parameters: PlantParameters,
  rack: RackState,
  inputs: PlantInputs,
  index: number,
  leftPa: number,
): number {
  const open = openShare(parameters, rack, inputs, index);
  const gasOnlyPa = gasFrictionPa(parameters, rack);
  if (leftPa <= gasOnlyPa || open < 1e-3) return 0;
  const { lossPa } = parameters;
  const own = parameters.ratedFlowM3PerS / parameters.racks;
  const hose = lossPa.hoseAndManifold / (own * own);
  const servers = (lossPa.restrictor + lossPa.platesAndHoses) / (own * own * open * open);
  const a = 2 * hose + servers;
  const b = hose * rack.returnGasM3PerS;
  return (Math.sqrt(b * b + 4 * a * (leftPa - gasOnlyPa)) - b) / (2 * a);
}

/** Friction of the gas alone in a rack's return, Pa: matters only once the water has stopped. */
function gasFrictionPa(parameters: PlantParameters, rack: RackState): number {
  const own = parameters.ratedFlowM3PerS / parameters.racks;
  const gasAgainstWater = 5e-4;
  return (
    (gasAgainstWater * parameters.lossPa.hoseAndManifold * rack.returnGasM3PerS * rack.returnGasM3PerS) / (own * own)
  );
}

function storePressures(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  flow: number,
  driving: number,
  dtS: number,
): void {
  const { ratedFlowM3PerS: rated, lossPa, elevationM, racks } = parameters;
  const mainFactor = lossPa.main / (rated * rated);
  const supplyLoss = mainFactor * flow * flow;
  const returnLoss = mainFactor * flow * (flow + state.last.returnMainGasM3PerS);
  const own = rated / racks;
  const hose = lossPa.hoseAndManifold / (own * own);
  const tapHead = (elevationM.returnInlet - elevationM.rackReturnTap) * headPaPerM;
  const supplyHead = (supplySurfaceM(parameters, state) - elevationM.rackReturnTap) * headPaPerM;
  let sum = 0;
  for (let r = 0; r < racks; r += 1) {
    const rack = state.racks[r] as RackState;
    const q = flow > 0 ? rackFlow(parameters, rack, inputs, r, driving - supplyLoss - returnLoss) : 0;
    rack.flowM3PerS = q;
    rack.supplyManifoldPa = state.last.supplyTankPa + supplyHead - supplyLoss - hose * q * q;
    const frictionPa = hose * q * (q + rack.returnGasM3PerS) + gasFrictionPa(parameters, rack);
    const manifoldPa = state.last.separatorPa + tapHead + returnLoss + frictionPa;
    rack.returnManifoldPa += ((manifoldPa - rack.returnManifoldPa) * dtS) / (manifoldLagS + dtS);
    sum += q;
  }
  state.last.loopFlowM3PerS = sum;
  state.last.returnMainLossPa = returnLoss;
}

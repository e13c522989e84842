import { supplySurfaceM } from '../loop-hydraulics';
import type { PlantInputs } from '../plant-inputs';
import type { PlantParameters } from '../plant-parameters';
import type { PlantState } from '../plant-state';
import { flowOf, type RackPaths } from '../rack-path';
import { headPaPerM } from '../water';
import { root } from './root';
import type { HeaderCondition, SharedFlows, SharedLoopState } from './shared-loop-state';

/** A unit as the headers feel it. */
interface End {
  /** Pressures at the height of the return inlet, Pa. */
  readonly sourcePa: number;
  readonly sinkPa: number;
  /** Loss of each main, Pa/(m³/s)². */
  readonly main: number;
  /** How far the stop valve and the last of the tank's water let the main carry, 0 to 1. */
  readonly open: number;
  readonly leak: number;
  /** The stop valves of supply and return move together, 0 to 1: a standby takes no return either. */
  readonly valve: number;
  /** Gas that goes along in the return main, m³/s. */
  readonly gas: number;
}

/**
 * Flows of units joined at two headers: each supply main carries what its tank's pressure gives it over the header,
 * each return main what the header's gives over its separator, and the racks take what is between. Leaves the
 * headers' pressures in the state.
 */
export function solveSharedFlows(
  parameters: readonly PlantParameters[],
  state: SharedLoopState,
  conditions: readonly HeaderCondition[],
  paths: RackPaths,
): SharedFlows {
  const ends = state.units.map((unit, i) =>
    endOf(parameters[i] as PlantParameters, unit, conditions[i] as HeaderCondition),
  );
  const lowest = Math.min(...ends.flatMap(({ sourcePa, sinkPa }) => [sourcePa, sinkPa]));
  const highest = Math.max(...ends.flatMap(({ sourcePa, sinkPa }) => [sourcePa, sinkPa])) + 1;
  const rated = (parameters[0] as PlantParameters).ratedFlowM3PerS;
  const tolerance = 1e-9 * rated;
  const given = (headerPa: number): number => sum(ends.map((end) => supplyOf(end, headerPa)));
  const taken = (headerPa: number): number => sum(ends.map((end) => returnOf(end, headerPa)));
  const throughRacks = (leftPa: number): number => {
    let flow = 0;
    for (let r = 0; r < paths.a.length; r += 1) flow += flowOf(paths, r, leftPa);
    return flow;
  };
  /** The return header's pressure at which the returns take a flow: they take more the higher it stands. */
  const returnHeader = (flow: number): number => root((pa) => taken(pa) - flow, lowest, highest + 50_000, tolerance);
  const excess = (supplyPa: number): number => {
    const flow = given(supplyPa);
    return flow <= 0 ? flow - throughRacks(supplyPa - lowest) : flow - throughRacks(supplyPa - returnHeader(flow));
  };
  state.supplyHeaderPa = root(excess, lowest, highest, tolerance);
  const flow = Math.max(0, given(state.supplyHeaderPa));
  state.returnHeaderPa = flow > 0 ? returnHeader(flow) : lowest;
  const supply = ends.map((end) => supplyOf(end, state.supplyHeaderPa));
  return {
    supply: evenedOut(supply, flow > 0 ? throughRacks(state.supplyHeaderPa - state.returnHeaderPa) : 0),
    return: ends.map((end) => returnOf(end, state.returnHeaderPa)),
  };
}

/** What the search left over goes to those that give, so that no water is lost in the headers. */
function evenedOut(supply: readonly number[], taken: number): number[] {
  const giving = sum(supply.map((flow) => Math.max(0, flow)));
  const missing = taken - sum(supply);
  return supply.map((flow) => (flow > 0 ? flow + (missing * flow) / giving : flow));
}

function endOf(parameters: PlantParameters, unit: PlantState, condition: HeaderCondition): End {
  const { ratedFlowM3PerS: rated, lossPa, elevationM, volumeM3 } = parameters;
  const head = (supplySurfaceM(parameters, unit) - elevationM.returnInlet) * headPaPerM;
  const stock = (unit.supplyTankWaterM3 / volumeM3.supplyTankWater - 0.02) / 0.13;
  return {
    sourcePa: unit.last.supplyTankPa + head,
    sinkPa: unit.last.separatorPa,
    main: lossPa.main / (rated * rated),
    open: unit.loopValve * Math.min(1, Math.max(0, stock)),
    valve: unit.loopValve,
    leak: condition.checkValveLeakShare,
    gas: unit.last.returnMainGasM3PerS,
  };
}

/** Out of the supply main into the header, or back by a check valve that leaks. */
function supplyOf({ sourcePa, main, open, leak }: End, headerPa: number): number {
  const over = sourcePa - headerPa;
  return over >= 0 ? open * Math.sqrt(over / main) : -leak * Math.sqrt(-over / main);
}

/** Into the separator; its inlet lies above its water, so that none comes back. */
function returnOf({ sinkPa, main, gas, valve }: End, headerPa: number): number {
  const over = (headerPa - sinkPa) * valve * valve;
  return over > 0 ? (Math.sqrt(gas * gas + (4 * over) / main) - gas) / 2 : 0;
}

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);

/** Stroke of the stop valve below a supply tank, s. */
const loopValveS = 3;

export function moveStopValve(unit: PlantState, inputs: PlantInputs, dtS: number): void {
  if (inputs.condition.powerLost) return;
  const reach = dtS / loopValveS;
  const way = (inputs.orders.loopOpen ? 1 : 0) - unit.loopValve;
  unit.loopValve += Math.min(reach, Math.max(-reach, way));
}

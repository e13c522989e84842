import { fullestShare } from './cell';
import { openHose, type PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState, RackState } from './plant-state';
import { bubbleVolumeM3 } from './water';

/** A supply manifold so far filled with gas gives its servers no water any more. */
const lockedShare = 0.85;
/** Gas against water in the friction of a rack's return. */
const gasAgainstWater = 5e-4;

/** Pressure difference over each rack: a q² + b q + gasOnlyPa. `a` is 0 where no water passes. */
export interface RackPaths {
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly gasOnlyPa: Float64Array;
}

/** Loss of a rack's hose and manifold on one side, Pa/(m³/s)². */
export function hoseFactor({ ratedFlowM3PerS, racks, lossPa }: PlantParameters): number {
  return lossPa.hoseAndManifold * (racks / ratedFlowM3PerS) ** 2;
}

/** What each rack opposes to the water in this step. */
export function rackPaths(parameters: PlantParameters, state: PlantState, inputs: PlantInputs): RackPaths {
  const { racks, lossPa, ratedFlowM3PerS } = parameters;
  const a = new Float64Array(racks);
  const b = new Float64Array(racks);
  const gasOnlyPa = new Float64Array(racks);
  const hose = hoseFactor(parameters);
  const servers = (lossPa.restrictor + lossPa.platesAndHoses) * (racks / ratedFlowM3PerS) ** 2;
  for (let r = 0; r < racks; r += 1) {
    const rack = state.racks[r] as RackState;
    // friction of the gas alone matters only once the water has stopped
    gasOnlyPa[r] = gasAgainstWater * hose * rack.returnGasM3PerS ** 2;
    const open = openShare(parameters, rack, inputs, r);
    if (open < 1e-3) continue;
    a[r] = 2 * hose + (servers * (inputs.condition.rackResistance[r] ?? 1)) / (open * open);
    b[r] = hose * rack.returnGasM3PerS;
  }
  return { a, b, gasOnlyPa };
}

/** Water through rack `r` at a pressure difference between the mains: the root of a quadratic, as the return carries gas too. */
export function flowOf(paths: RackPaths, r: number, leftPa: number): number {
  const a = paths.a[r] as number;
  const b = paths.b[r] as number;
  const over = leftPa - (paths.gasOnlyPa[r] as number);
  if (a === 0 || over <= 0) return 0;
  return (Math.sqrt(b * b + 4 * a * over) - b) / (2 * a);
}

/** Share of a rack's servers whose water still runs, and of its supply manifold that gas has not filled. */
function openShare(parameters: PlantParameters, rack: RackState, inputs: PlantInputs, index: number): number {
  if (inputs.orders.isolated[index] || (inputs.condition.mainCutBoreM[index] ?? 0) > 0) return 0;
  const { serversPerRack, chipsPerServer, volumeM3 } = parameters;
  const blocked = 1 - (inputs.condition.plateFlowShare[index] ?? 1);
  const lost = openHose(inputs, index) ? 1 : blocked / chipsPerServer;
  const whole = 1 - lost / serversPerRack;
  if (rack.supplyGasMol === 0) return whole;
  const gasM3 = bubbleVolumeM3(rack.supplyGasMol, rack.supplyManifoldPa, rack.inletC);
  return whole * Math.max(0, 1 - gasM3 / ((lockedShare * fullestShare * volumeM3.rack) / 4));
}

import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState, RackState } from './plant-state';
import { rackPoints, type RackPoints, type Readings } from './reading-names';
import { wetFromM3 } from './control-readings';
import { waterHeatJPerM3K } from './water';

/** Fans at idle turn with this share of their speed. Common practice, 0.2 to 0.4. */
const idleFanSpeed = 0.3;

/** Per rack: isolated, water below it, and its two servers: `a` stays whole, `b` has the hose and the plate that faults may strike. */
export function readServers(
  readings: Readings,
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
): void {
  for (let r = 0; r < parameters.racks; r += 1) {
    const rack = state.racks[r] as RackState;
    const points = rackPoints[r] as RackPoints;
    readings.set(points.isolated, inputs.orders.isolated[r] ? 1 : 0);
    readings.set(points.wet, rack.wetM3 > wetFromM3 ? 1 : 0);
    const powerW = rack.chipHeatW / parameters.serversPerRack;
    readings.set(points.serverC[0], serverReturnC(rack.serverFlowM3PerS, rack.serverWaterW, rack.chipC, rack));
    readings.set(points.serverC[1], serverReturnC(rack.probeFlowM3PerS, rack.probeWaterW, rack.probeChipC, rack));
    readings.set(points.serverW[0], powerW);
    readings.set(points.serverW[1], powerW);
    if (!parameters.chip.fans) continue;
    readings.set(points.fanSpeed[0], fanSpeed(parameters, rack.fanWPerK));
    readings.set(points.fanSpeed[1], fanSpeed(parameters, Math.max(rack.probeFanWPerK, rack.plateFanWPerK)));
  }
}

/** Water out of a server; where it stands, it takes the chips' temperature. */
function serverReturnC(flowM3PerS: number, waterW: number, chipC: number, rack: RackState): number {
  const riseK = waterW / (Math.max(flowM3PerS, 1e-9) * waterHeatJPerM3K);
  return Math.min(Math.max(chipC, rack.inletC), rack.inletC + Math.max(0, riseK));
}

function fanSpeed({ chip }: PlantParameters, wPerK: number): number {
  if (!chip.fans) return 0;
  const { idleWPerK, fullWPerK } = chip.fans;
  return idleFanSpeed + ((1 - idleFanSpeed) * (wPerK - idleWPerK)) / (fullWPerK - idleWPerK);
}

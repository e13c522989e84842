import { openHose, type PlantInputs } from './plant-inputs';
import type { ChipParameters, PlantParameters } from './plant-parameters';
import type { PlantState, RackState } from './plant-state';

/** From its limit on the chip lowers its power, and is off this many kelvin above it. */
const throttleSpanK = 6;
/** Fans go from idle to full within this span below their limit, K. */
const fanSpanK = 8;
/** Share of rated flow below which water counts as standing in a plate. */
const standingShare = 0.003;

/**
 * Chips of one rack over a step: the servers that stay whole, the one whose hose may be cut, and in it the one whose
 * plate may be blocked.
 * Heat goes to the water by the plate and to the room by the fans.
 * @returns W into the rack's water.
 */
export function heatRackChips(
  parameters: PlantParameters,
  state: PlantState,
  rack: RackState,
  inputs: PlantInputs,
  index: number,
  dtS: number,
): number {
  const { serversPerRack, chipsPerServer, racks, ratedFlowM3PerS, chip } = parameters;
  const load = inputs.orders.loadPermitted ? (inputs.loadShare[index] ?? 0) : 0;
  const hottestC = Math.max(rack.chipC, rack.probeChipC, rack.plateChipC);
  if (chip.tripC !== null) rack.tripped = load > 0 && (rack.tripped || hottestC > chip.tripC);
  const powerW = rack.tripped ? 0 : load * parameters.chipPowerW;
  const cut = openHose(inputs, index) !== null;
  const plateFlow = inputs.condition.plateFlowShare[index] ?? 1;
  const paste = inputs.condition.pasteShare[index] ?? 1;
  const probeServer = cut ? 0 : 1 - (1 - plateFlow) / chipsPerServer;
  const running = serversPerRack - 1 + probeServer;
  const ownM3PerS = ratedFlowM3PerS / racks / serversPerRack;
  const share = running > 0 ? rack.flowM3PerS / ownM3PerS / running : 0;
  const around = { inletC: rack.inletC, hallC: inputs.hallC, powerW, dtS };

  const whole = stepChip(chip, rack.chipC, rack.fanWPerK, share, 1, around);
  const probe = stepChip(chip, rack.probeChipC, rack.probeFanWPerK, cut ? 0 : share, 1, around);
  const alike = plateFlow === 1 && paste === 1 && Math.abs(rack.plateChipC - rack.probeChipC) < 1e-9;
  const plate = alike
    ? probe
    : stepChip(chip, rack.plateChipC, rack.plateFanWPerK, cut ? 0 : share * plateFlow, paste, around);
  rack.chipC = whole.chipC;
  rack.fanWPerK = whole.fanWPerK;
  rack.probeChipC = probe.chipC;
  rack.probeFanWPerK = probe.fanWPerK;
  rack.plateChipC = plate.chipC;
  rack.plateFanWPerK = plate.fanWPerK;
  rack.serverFlowM3PerS = share * ownM3PerS;
  rack.probeFlowM3PerS = share * ownM3PerS * probeServer;
  rack.serverWaterW = chipsPerServer * whole.waterW;
  rack.probeWaterW = (chipsPerServer - 1) * probe.waterW + plate.waterW;

  const others = (serversPerRack - 1) * chipsPerServer;
  const sum = (of: 'heatW' | 'waterW' | 'hallW'): number =>
    others * whole[of] + (chipsPerServer - 1) * probe[of] + plate[of];
  rack.chipHeatW = sum('heatW');
  state.last.chipHeatW += rack.chipHeatW;
  state.sums.chipHeatJ += rack.chipHeatW * dtS;
  state.sums.hallHeatJ += sum('hallW') * dtS;
  return sum('waterW');
}

interface ChipStep {
  chipC: number;
  fanWPerK: number;
  heatW: number;
  waterW: number;
  hallW: number;
}

interface Around {
  readonly inletC: number;
  readonly hallC: number;
  readonly powerW: number;
  readonly dtS: number;
}

/** `pasteShare`: the fixed resistance, between case and plate, against its usual value. */
function stepChip(
  chip: ChipParameters,
  beforeC: number,
  fanWPerK: number,
  flowShare: number,
  pasteShare: number,
  { inletC, hallC, powerW, dtS }: Around,
): ChipStep {
  const fan = nextFan(chip, fanWPerK, beforeC, dtS);
  const throttle = Math.min(1, Math.max(0, (chip.throttleC + throttleSpanK - beforeC) / throttleSpanK));
  const heatW = powerW * throttle;
  const toWater = 1 / (pasteShare * chip.fixedKPerW + chip.flowKPerW * Math.max(flowShare, standingShare) ** -0.8);
  const rate = dtS / chip.heatJPerK;
  const chipC = (beforeC + rate * (heatW + toWater * inletC + fan * hallC)) / (1 + rate * (toWater + fan));
  return { chipC, fanWPerK: fan, heatW, waterW: toWater * (chipC - inletC), hallW: fan * (chipC - hallC) };
}

function nextFan(chip: ChipParameters, beforeWPerK: number, chipC: number, dtS: number): number {
  const { fans } = chip;
  if (!fans) return 0;
  const share = Math.min(1, Math.max(0, (chipC - fans.fullFromC + fanSpanK) / fanSpanK));
  const wanted = fans.idleWPerK + share * (fans.fullWPerK - fans.idleWPerK);
  return beforeWPerK + ((wanted - beforeWPerK) * dtS) / (fans.lagS + dtS);
}

import type { PlantInputs } from './plant-inputs';
import type { ChipParameters, PlantParameters } from './plant-parameters';
import type { PlantState, RackState } from './plant-state';

/** From its limit on the chip lowers its power, and is off this many kelvin above it. */
const throttleSpanK = 6;
/** Fans go from idle to full within this span below their limit, K. */
const fanSpanK = 8;
/** Share of rated flow below which water counts as standing in a plate. */
const standingShare = 0.003;

/**
 * Chips of one rack over a step: the servers that stay whole, and the one whose hose may be cut.
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
  const load = inputs.loadShare[index] ?? 0;
  if (chip.tripC !== null)
    rack.tripped = load > 0 && (rack.tripped || rack.chipC > chip.tripC || rack.probeChipC > chip.tripC);
  const powerW = rack.tripped ? 0 : load * parameters.chipPowerW;
  const cut = inputs.opening[index] !== null;
  const running = serversPerRack - (cut ? 1 : 0);
  const share = running > 0 ? ((rack.flowM3PerS / ratedFlowM3PerS) * racks * serversPerRack) / running : 0;

  const whole = stepChip(chip, rack.chipC, rack.fanWPerK, powerW, share, rack.inletC, inputs.hallC, dtS);
  const probe = stepChip(
    chip,
    rack.probeChipC,
    rack.probeFanWPerK,
    powerW,
    cut ? 0 : share,
    rack.inletC,
    inputs.hallC,
    dtS,
  );
  rack.chipC = whole.chipC;
  rack.fanWPerK = whole.fanWPerK;
  rack.probeChipC = probe.chipC;
  rack.probeFanWPerK = probe.fanWPerK;

  const others = (serversPerRack - 1) * chipsPerServer;
  const sum = (of: 'heatW' | 'waterW' | 'hallW'): number => others * whole[of] + chipsPerServer * probe[of];
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

function stepChip(
  chip: ChipParameters,
  beforeC: number,
  fanWPerK: number,
  powerW: number,
  flowShare: number,
  inletC: number,
  hallC: number,
  dtS: number,
): ChipStep {
  const fan = nextFan(chip, fanWPerK, beforeC, dtS);
  const throttle = Math.min(1, Math.max(0, (chip.throttleC + throttleSpanK - beforeC) / throttleSpanK));
  const heatW = powerW * throttle;
  const toWater = 1 / (chip.fixedKPerW + chip.flowKPerW * Math.max(flowShare, standingShare) ** -0.8);
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

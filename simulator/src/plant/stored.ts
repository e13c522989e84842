import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { mainCells } from './plant-state';
import { waterHeatJPerM3K } from './water';

/** Water of a loop that is full of it, m³. */
export function ratedWaterM3({ volumeM3, racks }: PlantParameters): number {
  const pipes = volumeM3.supplyMain + volumeM3.returnMain + racks * volumeM3.rack + volumeM3.unit;
  return volumeM3.supplyTankWater + volumeM3.separatorWater + pipes;
}

/** Water in the whole loop, m³. */
export function storedWaterM3(parameters: PlantParameters, state: PlantState): number {
  const { volumeM3 } = parameters;
  const tanks = volumeM3.supplyTankWater + volumeM3.separatorWater;
  let gasM3 = 0;
  for (const cellM3 of state.returnMainGasM3) gasM3 += cellM3;
  for (const rack of state.racks) gasM3 += rack.supplyGasM3 + rack.returnGasM3 + rack.shortM3;
  return state.supplyTankWaterM3 + state.separatorWaterM3 + ratedWaterM3(parameters) - tanks - gasM3;
}

/** Dry gas in the whole loop, dissolved air included, mol. */
export function storedGasMol(state: PlantState): number {
  let sum = state.supplyTankGasMol + state.separatorGasMol + state.supplyTankDissolvedMol + state.separatorDissolvedMol;
  for (const mol of state.returnMainGasMol) sum += mol;
  for (const rack of state.racks) sum += rack.supplyGasMol + rack.returnGasMol;
  return sum;
}

/** Heat in water, exchanger and chips, counted from 0 °C, J. */
export function storedHeatJ(parameters: PlantParameters, state: PlantState): number {
  const { volumeM3, chip, chipsPerServer, serversPerRack } = parameters;
  const half = volumeM3.rack / 2;
  let kM3 = state.supplyTankWaterM3 * state.supplyTankC + state.separatorWaterM3 * state.separatorC;
  kM3 += (volumeM3.unit / 2) * (state.pumpLineC + state.exchangerHotC + state.exchangerColdC);
  for (let i = 0; i < mainCells; i += 1) {
    kM3 += (volumeM3.supplyMain / mainCells) * (state.supplyMainC[i] ?? 0);
    kM3 += (volumeM3.returnMain / mainCells - (state.returnMainGasM3[i] ?? 0)) * (state.returnMainC[i] ?? 0);
  }
  let chipsJ = 0;
  for (const rack of state.racks) {
    kM3 += (half - rack.supplyGasM3) * rack.inletC + (half - rack.returnGasM3 - rack.shortM3) * rack.outletC;
    const others = (serversPerRack - 1) * chipsPerServer * rack.chipC + (chipsPerServer - 1) * rack.probeChipC;
    chipsJ += chip.heatJPerK * (others + rack.plateChipC);
  }
  return kM3 * waterHeatJPerM3K + chipsJ;
}

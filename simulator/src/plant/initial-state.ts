import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import { mainCells } from './plant-state';
import type { PlantState, RackState } from './plant-state';
import { stepPlant } from './step-plant';
import { ratedWaterM3 } from './stored';
import { usualConductivitySPerM } from './salts';
import { gasSpaceMol, waterHeatJPerM3K } from './water';

/** A loop at rest with itself near its rated duty: full, evacuated, warm. */
export function ratedState(parameters: PlantParameters): PlantState {
  const { set, volumeM3, ratedFlowM3PerS, exchanger } = parameters;
  const warmC = set.supplyC + ratedHeatW(parameters) / (ratedFlowM3PerS * waterHeatJPerM3K);
  return {
    timeS: 0,
    supplyTankWaterM3: volumeM3.supplyTankWater,
    supplyTankC: set.supplyC,
    supplyTankGasMol: gasSpaceMol(set.supplyTankPa, volumeM3.supplyTankGas, set.supplyC),
    separatorWaterM3: volumeM3.separatorWater,
    separatorC: warmC,
    separatorGasMol: gasSpaceMol(set.separatorPa, volumeM3.separatorGas, warmC),
    supplyTankDissolvedMol: 0.285 * volumeM3.supplyTankWater,
    separatorDissolvedMol: 0.275 * volumeM3.separatorWater,
    saltsSM2: usualConductivitySPerM * ratedWaterM3(parameters),
    trayM3: 0,
    topUpM3: 0,
    supplyMainC: new Float64Array(mainCells).fill(set.supplyC),
    returnMainC: new Float64Array(mainCells).fill(warmC),
    returnMainGasMol: new Float64Array(mainCells),
    returnMainGasM3: new Float64Array(mainCells),
    pumpLineC: warmC,
    exchangerHotC: set.supplyC,
    exchangerColdC: exchanger.facilitySupplyC + 9.7,
    racks: Array.from({ length: parameters.racks }, () => ratedRack(parameters, warmC)),
    pumpSpeed: 0.947,
    levelIntegral: 0,
    filterLoad: 1,
    valvePosition: 0.5,
    valveCommand: 0.5,
    valveIntegral: 0.5,
    controlledC: set.supplyC,
    vacuumRunning: parameters.vacuum.control === 'continuous',
    vacuumSpeed: parameters.vacuum.control === 'continuous' ? parameters.vacuum.lowestSpeed : 0,
    vacuumIntegral: 0,
    separatorErrorPa: 0,
    standbySpeed: 0,
    standbyAboveS: 0,
    standbyRanS: 0,
    standbyRunning: false,
    loopValve: 1,
    refilling: false,
    returningS: 0,
    ventCommand: 0,
    ventPosition: 0,
    last: {
      supplyTankPa: set.supplyTankPa,
      separatorPa: set.separatorPa,
      loopFlowM3PerS: ratedFlowM3PerS,
      returnMainLossPa: parameters.lossPa.main,
      returnMainGasM3PerS: 0,
      transferM3PerS: ratedFlowM3PerS,
      pumpInletPa: set.separatorPa,
      suctionHeadM: 3,
      facilityKgPerS: exchanger.facilityFullKgPerS / 2,
      exchangerW: ratedHeatW(parameters),
      exhaustMolPerS: 0,
      chipHeatW: 0,
      carriedOverM3PerS: 0,
      vacuumBleedM3PerS: 0,
    },
    sums: {
      chipHeatJ: 0,
      pumpHeatJ: 0,
      facilityHeatJ: 0,
      hallHeatJ: 0,
      exhaustHeatJ: 0,
      waterOutM3: 0,
      waterInM3: 0,
      waterHeatJ: 0,
      gasInMol: 0,
      gasOutMol: 0,
    },
  };
}

/** The rated state after `seconds` at the given inputs: lets temperatures and controllers find their places. */
export function settledState(
  parameters: PlantParameters,
  inputs: PlantInputs,
  seconds: number,
  stepS = 0.1,
): PlantState {
  const state = ratedState(parameters);
  const steps = Math.round(seconds / stepS);
  for (let i = 0; i < steps; i += 1) stepPlant(parameters, state, inputs, stepS);
  state.timeS = 0;
  return state;
}

/** Chip heat that goes into the water at rated load in a hall of 27 °C. */
export function ratedHeatW(parameters: PlantParameters): number {
  const { chip, racks, serversPerRack, chipsPerServer, chipPowerW, set } = parameters;
  const resistance = chip.fixedKPerW + chip.flowKPerW;
  const fan = chip.fans ? chip.fans.idleWPerK : 0;
  const chipC = (chipPowerW + set.supplyC / resistance + fan * 27) / (1 / resistance + fan);
  return racks * serversPerRack * chipsPerServer * ((chipC - set.supplyC) / resistance);
}

function ratedRack(parameters: PlantParameters, warmC: number): RackState {
  const { chip, chipPowerW, set } = parameters;
  const chipC = set.supplyC + (chip.fixedKPerW + chip.flowKPerW) * chipPowerW * (chip.fans ? 0.87 : 1);
  return {
    inletC: set.supplyC,
    outletC: warmC,
    supplyGasMol: 0,
    supplyGasM3: 0,
    returnGasMol: 0,
    returnGasM3: 0,
    chipC,
    probeChipC: chipC,
    plateChipC: chipC,
    fanWPerK: chip.fans?.idleWPerK ?? 0,
    probeFanWPerK: chip.fans?.idleWPerK ?? 0,
    plateFanWPerK: chip.fans?.idleWPerK ?? 0,
    serverWaterW: 0,
    probeWaterW: 0,
    serverFlowM3PerS: 0,
    probeFlowM3PerS: 0,
    tripped: false,
    flowM3PerS: parameters.ratedFlowM3PerS / parameters.racks,
    supplyManifoldPa: set.supplyTankPa,
    returnManifoldPa: set.separatorPa,
    returnGasM3PerS: 0,
    chipHeatW: 0,
    shortM3: 0,
    wetM3: 0,
  };
}

import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState, RackState } from './plant-state';
import { supplySurfaceM } from './loop-hydraulics';
import { pumpPowerW } from './transfer-pump';
import { freeAirMolPerM3, headPaPerM, waterDensityKgPerM3 } from './water';

/** Draw of controls and small parts, W. */
const controlsPowerW = 150;

/** True values by point id (SI, °C, pressures absolute), as perfect sensors would give them. */
export type Readings = Map<string, number>;

export const branchId = (index: number): string => `r${index + 1}`;
/** Two plates a rack: one in a server that stays whole (`a`), one in the server whose hose a fault may open (`b`). */
export const plateId = (index: number, which: 'a' | 'b'): string => `${branchId(index)}${which}`;

export function readPlant(parameters: PlantParameters, state: PlantState, inputs: PlantInputs): Readings {
  const readings: Readings = new Map();
  readUnit(readings, parameters, state, inputs);
  for (let r = 0; r < parameters.racks; r += 1) readRack(readings, parameters, state.racks[r] as RackState, r);
  return readings;
}

function readUnit(readings: Readings, parameters: PlantParameters, state: PlantState, inputs: PlantInputs): void {
  const { elevationM, volumeM3, lossPa, vacuum, ratedFlowM3PerS: rated } = parameters;
  const { last } = state;
  const returnC = state.returnMainC[state.returnMainC.length - 1] ?? state.separatorC;
  readings.set('supply.temperature', state.supplyTankC);
  readings.set('return.temperature', returnC);
  readings.set('facility.supply.temperature', inputs.facilitySupplyC);
  readings.set('facility.return.temperature', state.exchangerColdC);
  readings.set(
    'supply.pressure',
    last.supplyTankPa + (supplySurfaceM(parameters, state) - elevationM.supplySensor) * headPaPerM,
  );
  readings.set('return.pressure', last.separatorPa + (elevationM.returnInlet - elevationM.returnSensor) * headPaPerM);
  readings.set('supplyTank.pressure', last.supplyTankPa);
  readings.set('separator.pressure', last.separatorPa);
  readings.set('pump.inlet.pressure', last.pumpInletPa);
  readings.set('loop.flow', last.loopFlowM3PerS);
  readings.set('facility.flow', last.facilityKgPerS / waterDensityKgPerM3);
  readings.set('supplyTank.level', state.supplyTankWaterM3 / volumeM3.supplyTankAreaM2);
  readings.set('separator.level', state.separatorWaterM3 / volumeM3.separatorAreaM2);
  readings.set('filter.pressureDrop', lossPa.filter * state.filterLoad * (last.transferM3PerS / rated) ** 2);
  readings.set('pump.speed', state.pumpSpeed);
  readings.set('pump.power', pumpPowerW(parameters, state));
  readings.set('pump.running', 1);
  readings.set('vacuum.speed', state.vacuumSpeed);
  readings.set('vacuum.running', state.vacuumRunning ? 1 : 0);
  readings.set('vacuum.exhaustFlow', last.exhaustMolPerS / freeAirMolPerM3);
  readings.set('valve.command', state.valveCommand);
  readings.set('valve.position', state.valvePosition);
  const vacuumW = vacuum.powerW * (state.vacuumSpeed + state.standbySpeed);
  readings.set('unit.power', pumpPowerW(parameters, state) + vacuumW + controlsPowerW);
  readings.set('water.found', 0);
}

function readRack(readings: Readings, parameters: PlantParameters, rack: RackState, index: number): void {
  const branch = `branch.${branchId(index)}`;
  readings.set(`${branch}.flow`, rack.flowM3PerS);
  readings.set(`${branch}.return.temperature`, rack.outletC);
  readings.set(`${branch}.return.pressure`, rack.returnManifoldPa);
  readings.set(`${branch}.power`, rack.chipHeatW);
  readings.set(`plate.${plateId(index, 'a')}.temperature`, rack.chipC);
  readings.set(`plate.${plateId(index, 'b')}.temperature`, rack.probeChipC);
  const chips = parameters.serversPerRack * parameters.chipsPerServer;
  readings.set(`plate.${plateId(index, 'a')}.power`, rack.chipHeatW / chips);
  readings.set(`plate.${plateId(index, 'b')}.power`, rack.chipHeatW / chips);
}

import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState, RackState } from './plant-state';
import { supplySurfaceM } from './loop-hydraulics';
import { readControls, wetFromM3 } from './control-readings';
import { rackPoints, type RackPoints, type Readings } from './reading-names';
import { readServers } from './server-readings';
import { leadRuns } from './standby-source';
import { pumpPowerW, pumpRuns } from './transfer-pump';
import { vacuumPowerW } from './vacuum-source';
import { freeAirMolPerM3, headPaPerM, waterDensityKgPerM3 } from './water';

/** Draw of controls and small parts, W. */
const controlsPowerW = 150;

export { branchId, plateId, type Readings } from './reading-names';

export function readPlant(parameters: PlantParameters, state: PlantState, inputs: PlantInputs): Readings {
  const readings: Readings = new Map();
  readUnit(readings, parameters, state, inputs);
  for (let r = 0; r < parameters.racks; r += 1) readRack(readings, parameters, state.racks[r] as RackState, r);
  readControls(readings, parameters, state, inputs);
  readServers(readings, parameters, state, inputs);
  return readings;
}

function readUnit(readings: Readings, parameters: PlantParameters, state: PlantState, inputs: PlantInputs): void {
  const { elevationM, volumeM3, lossPa, ratedFlowM3PerS: rated } = parameters;
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
  readings.set(
    'filter.pressureDrop',
    lossPa.filter * state.filterLoad * inputs.condition.filterShare * (last.transferM3PerS / rated) ** 2,
  );
  readings.set('pump.speed', state.pumpSpeed);
  readings.set('pump.power', pumpPowerW(parameters, state));
  readings.set('pump.running', pumpRuns(inputs) ? 1 : 0);
  readings.set('vacuum.speed', state.vacuumSpeed);
  readings.set('vacuum.running', leadRuns(state, inputs) ? 1 : 0);
  readings.set('vacuum.exhaustFlow', last.exhaustMolPerS / freeAirMolPerM3);
  readings.set('valve.command', state.valveCommand);
  readings.set('valve.position', state.valvePosition);
  const controlsW = inputs.condition.powerLost ? 0 : controlsPowerW;
  readings.set('unit.power', pumpPowerW(parameters, state) + vacuumPowerW(parameters, state, inputs) + controlsW);
  readings.set('water.found', state.racks.some(({ wetM3 }) => wetM3 > wetFromM3) ? 1 : 0);
}

function readRack(readings: Readings, parameters: PlantParameters, rack: RackState, index: number): void {
  const points = rackPoints[index] as RackPoints;
  readings.set(points.flow, rack.flowM3PerS);
  readings.set(points.returnC, rack.outletC);
  readings.set(points.returnPa, rack.returnManifoldPa);
  readings.set(points.power, rack.chipHeatW);
  readings.set(points.plateC[0], rack.chipC);
  readings.set(points.plateC[1], rack.plateChipC);
  const chipW = rack.chipHeatW / (parameters.serversPerRack * parameters.chipsPerServer);
  readings.set(points.plateW[0], chipW);
  readings.set(points.plateW[1], chipW);
}

import type { SensorKindName } from './sensor-kind';

/** Which sensor stands behind each point. Branch flows differ by unit type: `branchFlow`. */
export type BranchMeter = 'electromagneticFlow' | 'ultrasonicFlow';

const byPattern: Readonly<Record<string, SensorKindName>> = {
  'supply.temperature': 'temperature',
  'return.temperature': 'temperature',
  'facility.supply.temperature': 'temperature',
  'facility.return.temperature': 'temperature',
  'supply.pressure': 'pressure',
  'return.pressure': 'pressure',
  'supplyTank.pressure': 'pressure',
  'separator.pressure': 'pressure',
  'pump.inlet.pressure': 'pressure',
  'loop.flow': 'electromagneticFlow',
  'facility.flow': 'electromagneticFlow',
  'supplyTank.level': 'level',
  'separator.level': 'level',
  'filter.pressureDrop': 'pressureDrop',
  'pump.power': 'powerMeter',
  'vacuum.exhaustFlow': 'exhaustFlow',
  'valve.position': 'valve',
  'unit.power': 'powerMeter',
  'branch.*.return.temperature': 'temperature',
  'branch.*.return.pressure': 'pressure',
  'branch.*.power': 'powerMeter',
  'plate.*.temperature': 'chipTemperature',
  'plate.*.power': 'boardPower',
  'pump.discharge.pressure': 'pressure',
  'transfer.flow': 'electromagneticFlow',
  'vacuum.power': 'powerMeter',
  'vacuum.sealWater.temperature': 'temperature',
  'vacuum.bleedFlow': 'exhaustFlow',
  'water.conductivity': 'conductivity',
  'water.ph': 'ph',
  'water.inhibitor': 'inhibitor',
  'server.*.return.temperature': 'temperature',
  'server.*.power': 'boardPower',
  'tank.*.level': 'level',
  'tank.*.pressure': 'pressure',
  'ambient.pressure': 'barometer',
  'hall.temperature': 'temperature',
  'hall.humidity': 'humidity',
};

/** `branch.r5.flow` → what kind of sensor tells it; points that a controller knows of itself are exact. */
export function sensorKindOf(pointId: string, branchFlow: BranchMeter): SensorKindName {
  const pattern = pointId.replace(/^(branch|plate|server|tank)\.[^.]+\./, '$1.*.');
  if (pattern === 'branch.*.flow') return branchFlow;
  return byPattern[pattern] ?? 'exact';
}

import type { FleetUnit, SensorSet } from '../scenario/demo-fleet';

/** Beside what every unit has: what most have, and what only a rich set has. Common practice, no source. */
export const usualMore: readonly string[] = [
  'separator.levelHigh',
  'supplyTank.vent.command',
  'supplyTank.vent.position',
  'topUp.volume',
  'pump.discharge.pressure',
  'pump.command',
  'vacuum.command',
  'vacuum.available',
  'vacuum.standby.running',
  'vacuum.sealWater.temperature',
  'supply.setPoint',
  'supplyTank.setPoint',
  'separator.setPoint',
  'control.manual',
  'tray.water.found',
];
export const richMore: readonly string[] = [
  'transfer.flow',
  'vacuum.power',
  'vacuum.trap.full',
  'vacuum.bleedFlow',
  'water.conductivity',
  'water.ph',
  'water.inhibitor',
  'branch.*.isolated',
  'branch.*.water.found',
  'server.*.return.temperature',
  'server.*.power',
  'server.*.fanSpeed',
];
/** What a poor set lacks of what the others have: rack by rack hardly anything, and no meter that costs much. */
const poorLess: readonly string[] = [
  ...usualMore.filter((point) => !['pump.command', 'vacuum.command', 'separator.levelHigh'].includes(point)),
  'facility.flow',
  'pump.inlet.pressure',
  'branch.*.flow',
  'branch.*.return.pressure',
  'branch.*.power',
  'plate.*.power',
];

const lessOf: Readonly<Record<SensorSet, readonly string[]>> = {
  rich: [],
  usual: richMore,
  poor: [...poorLess, ...richMore],
};

/** Parts that a shape has not. */
const absentIn: Readonly<Record<FleetUnit['shape'], readonly string[]>> = {
  a: ['tank.*.level', 'tank.*.pressure', 'tank.*.filling'],
  b: [
    'supplyTank.level',
    'separator.level',
    'separator.levelHigh',
    'pump.inlet.pressure',
    'pump.discharge.pressure',
    'pump.speed',
    'pump.power',
    'pump.running',
    'pump.command',
    'transfer.flow',
    'filter.pressureDrop',
  ],
  c: [
    'supplyTank.level',
    'supplyTank.vent.command',
    'supplyTank.vent.position',
    'transfer.flow',
    'tank.*.level',
    'tank.*.pressure',
    'tank.*.filling',
  ],
};

/** Rows of its hall's payload that a unit has no sensor for. */
export function lacks(unit: FleetUnit, point: string): boolean {
  if (point === 'vacuum.exhaustFlow') return !unit.exhaustMeter;
  // the south hall's units of shape (a) have no sensor at the pump's inlet
  if (point === 'pump.inlet.pressure' && unit.hall === 'south' && unit.shape === 'a') return true;
  if (['vacuum.available', 'vacuum.standby.running'].includes(point) && unit.kind === 'bench') return true;
  if (point === 'server.*.fanSpeed' && unit.kind !== 'M') return true;
  return lessOf[unit.sensorSet].includes(point) || absentIn[unit.shape].includes(point);
}

import type { PlantInputs } from '../plant-inputs';
import type { PlantParameters } from '../plant-parameters';
import { readPlant, type Readings } from '../plant-readings';
import type { AlternatingState } from './alternating-state';

export const tankIds = ['t1', 't2'] as const;

/** Points that this shape has no part for. */
const absent = [
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
];

/** What the unit tells: `separator.pressure` is the receiver's, `supplyTank.pressure` that of whichever tank discharges. */
export function readAlternatingTanks(
  parameters: PlantParameters,
  state: AlternatingState,
  inputs: PlantInputs,
): Readings {
  const { loop, filling } = state;
  const readings = readPlant(parameters, loop, inputs);
  for (const point of absent) readings.delete(point);
  readings.set('supply.temperature', loop.exchangerHotC);
  const { supplyTankAreaM2 } = parameters.volumeM3;
  tankIds.forEach((id, index) => {
    const fills = index === filling;
    readings.set(`tank.${id}.level`, (fills ? loop.separatorWaterM3 : loop.supplyTankWaterM3) / supplyTankAreaM2);
    readings.set(`tank.${id}.pressure`, fills ? loop.last.separatorPa : loop.last.supplyTankPa);
    readings.set(`tank.${id}.filling`, fills ? 1 : 0);
  });
  return readings;
}

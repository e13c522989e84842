import { freeAirOfThroughput } from '@ebbline/shared/hydraulics/free-air';
import type { UnitContext } from '../judge-context';
import { stepWindowTicks } from '../step';
import { gasTemperature } from './worth-of-signals';

/**
 * Gas that collects in the separator beyond what is taken away, m³/s of free air: Q = V dp/dt (ideal gas). NaN where the room of the
 * gas is not known.
 * @param risePa of the separator pressure within the length of a step
 */
export function gasThatCollects(context: UnitContext, risePa: number): number {
  const roomM3 = context.unit.design.volumes.separatorGasM3 ?? Number.NaN;
  return freeAirOfThroughput((roomM3 * risePa) / stepWindowTicks, gasTemperature(context));
}

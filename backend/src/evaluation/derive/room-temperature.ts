import { celsius, type Celsius } from '@ebbline/shared/units/quantity';
import { badBits } from '../slots/quality-reasons';
import { roomTemperatureC } from './derive-constants';
import type { UnitFrame } from './unit-frame';

/** A lost thermometer leaves the usual air of a room: it changes the flow through an opening by 0.17 % a kelvin. */
export function roomTemperature({ state, plan }: UnitFrame): Celsius {
  const slot = plan.hallTemperatureSlot;
  if (slot < 0 || ((state.reasons[slot] ?? 0) & badBits) !== 0) return celsius(roomTemperatureC);
  return celsius(state.value[slot] ?? roomTemperatureC);
}

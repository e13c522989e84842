import type { Limits } from '../entry';
import { usable, type UnitContext } from '../judge-context';
import { fullShare, goesOnRising, nothingLeft } from './nothing-left';
import { standbyIsReserve, standbyWaits } from './standby-is-reserve';

/**
 * No source has anything left; null where that is not known. A standby that stands and may still start is reserve; one that has
 * failed to start is none. A lead that stands is none of its own: its speed of 0 is nothing that is left. Once a second.
 */
export function allFull(context: UnitContext, signal: number, limits: Limits, active: boolean): boolean | null {
  const { slots, state } = context;
  if (standbyIsReserve(context, signal, limits, active)) return false;
  if (usable(state, slots.vacuumRunning) < 0.5) return nothingLeft(context, signal, limits, active);
  const speed = usable(state, slots.vacuumSpeed);
  if (!Number.isNaN(speed)) return speed >= fullShare;
  const reserve = usable(state, slots.vacuumReserveAll);
  if (Number.isNaN(reserve)) return fullAtConstantSpeed(context, signal, limits, active);
  const capacity = usable(state, slots.vacuumCapacity);
  const one = Number.isNaN(capacity) ? 0 : capacity;
  const ofStandby = standbyWaits(context) ? one : 0;
  return reserve - ofStandby <= (1 - fullShare) * one;
}

/**
 * What a source has left is not known, as of a gas load beyond the meter, or while the standby runs: one at constant speed is full as it
 * runs. With lead and standby running that is all there is; else one may start unseen, and the rise has to go on.
 */
function fullAtConstantSpeed(context: UnitContext, signal: number, limits: Limits, active: boolean): boolean | null {
  const { slots, state, unit } = context;
  if (slots.vacuumSpeed >= 0 && (unit.vacuumSource?.control ?? 'speed') === 'speed') return null;
  if (!(usable(state, slots.vacuumRunning) >= 0.5)) return null;
  const standby = usable(state, slots.vacuumStandbyRunning);
  if (slots.vacuumStandbyRunning >= 0 && Number.isNaN(standby)) return null;
  return active || standby >= 0.5 || goesOnRising(context, signal, limits);
}

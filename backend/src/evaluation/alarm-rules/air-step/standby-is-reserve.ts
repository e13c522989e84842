import type { Limits } from '../entry';
import { usable, type UnitContext } from '../judge-context';
import { restTooLongPa } from '../plant-signs/vacuum-wanted';
import { oldEnd, stepOf } from '../step';

/** A standby source is ready and stands. */
export const standbyWaits = ({ slots, state }: Pick<UnitContext, 'slots' | 'state'>): boolean =>
  usable(state, slots.vacuumStandbyRunning) < 0.5 && usable(state, slots.vacuumAvailable) >= 0.5;

/**
 * So long a standby may take from the pressure at which it is called until it is seen to run: the usual three seconds of its control,
 * its contactor, and a telegram. Its run-up comes after that. Own rule.
 */
const startMs = 5000;

/**
 * A standby source stands, is ready, and may still start. Not once the separator has stood for `startMs` at the pressure at which one
 * is called: then it has failed to start, and is no reserve. Once a second.
 */
export function standbyIsReserve(context: UnitContext, signal: number, limits: Limits): boolean {
  const { air, nowMs, slots, state, unitIndex } = context;
  if (slots.vacuumAvailable < 0 || slots.vacuumStandbyRunning < 0) return false;
  const called = usable(state, slots.separatorPressure) > usualPa(context, signal, limits) + restTooLongPa;
  // A clock that was set back makes no call that lasts.
  if (!called) air.calledMs[unitIndex] = Number.NaN;
  else if (!(nowMs >= (air.calledMs[unitIndex] as number))) air.calledMs[unitIndex] = nowMs;
  return standbyWaits(context) && !(nowMs - (air.calledMs[unitIndex] as number) >= startMs);
}

/** The set point of the separator; where it is not known, the pressure from which it rises. NaN where it does not. */
function usualPa({ air, slots, state, unitIndex }: UnitContext, signal: number, { deadband, limit }: Limits): number {
  const rise = stepOf(air.rings, signal);
  if (rise < -deadband) air.roseFromPa[unitIndex] = Number.NaN;
  else if (rise > limit && Number.isNaN(air.roseFromPa[unitIndex]))
    air.roseFromPa[unitIndex] = oldEnd(air.rings, signal);
  const setPoint = usable(state, slots.separatorSetPoint);
  return Number.isNaN(setPoint) ? (air.roseFromPa[unitIndex] as number) : setPoint;
}

import type { Limits } from '../entry';
import { usable, type UnitContext } from '../judge-context';
import { restTooLongPa } from '../plant-signs/vacuum-wanted';
import { oldEnd, stepOf } from '../step';

/** A standby source stands, and nothing says that it is not ready: many a unit does not tell. */
export const standbyWaits = ({ slots, state }: Pick<UnitContext, 'slots' | 'state'>): boolean =>
  usable(state, slots.vacuumStandbyRunning) < 0.5 && !(usable(state, slots.vacuumAvailable) < 0.5);

/**
 * So long a standby may take from the pressure at which it is called until it runs: three to six seconds of its control, and its
 * contactor. Two readings of its contact come on top until that is seen, and its run-up after that. Own rule.
 */
const startMs = 8000;
/** Nobody waits for a standby where the separator has risen so far: a cut main has it at ambient in seconds, Pa. Own rule. */
const runAwayPa = 20_000;
/** Pressure that stands still for so long has come to its new place: what rises after that rises from there. Own rule. */
const stillMs = 60_000;

/**
 * A standby source stands and may still start. Not once the separator has stood for so long at the pressure at which one is called
 * that it ought to be seen to run: then it has failed to start, and is no reserve. Once a second.
 */
export function standbyIsReserve(context: UnitContext, signal: number, limits: Limits, active: boolean): boolean {
  const { air, nowMs, site, slots, state, unitIndex } = context;
  if (slots.vacuumStandbyRunning < 0) return false;
  const risenPa = usable(state, slots.separatorPressure) - usualPa(context, signal, limits, active);
  const called = risenPa > restTooLongPa;
  // A clock that was set back makes no call that lasts.
  if (!called) air.calledMs[unitIndex] = Number.NaN;
  else if (!(nowMs >= (air.calledMs[unitIndex] as number))) air.calledMs[unitIndex] = nowMs;
  const seenMs = startMs + 2 * (site.slots.periodMs[slots.vacuumStandbyRunning] as number);
  const hasFailed = risenPa > runAwayPa || nowMs - (air.calledMs[unitIndex] as number) >= seenMs;
  return standbyWaits(context) && !hasFailed;
}

/** The set point of the separator; where it is not known, the pressure from which it rises. NaN where it does not. */
function usualPa(context: UnitContext, signal: number, { deadband, limit }: Limits, active: boolean): number {
  const { air, slots, state, unitIndex } = context;
  const rise = stepOf(air.rings, signal);
  const still = !active && Math.abs(rise) < deadband;
  if (rise < -deadband || standsLong(context, still)) air.roseFromPa[unitIndex] = Number.NaN;
  else if (rise > limit && Number.isNaN(air.roseFromPa[unitIndex]))
    air.roseFromPa[unitIndex] = oldEnd(air.rings, signal);
  const setPoint = usable(state, slots.separatorSetPoint);
  return Number.isNaN(setPoint) ? (air.roseFromPa[unitIndex] as number) : setPoint;
}

/** The pressure that has risen stands still, and has for `stillMs`. */
function standsLong({ air, nowMs, unitIndex }: UnitContext, still: boolean): boolean {
  if (!still || Number.isNaN(air.roseFromPa[unitIndex])) air.stillSinceMs[unitIndex] = Number.NaN;
  else if (!(nowMs >= (air.stillSinceMs[unitIndex] as number))) air.stillSinceMs[unitIndex] = nowMs;
  return nowMs - (air.stillSinceMs[unitIndex] as number) >= stillMs;
}

import { keep, recall, usable, type UnitContext } from '../judge-context';
import { stepWindowTicks } from '../step';
import { gasThatCollects } from './gas-that-collects';

/** Since when the standby source is seen to run. The cells before it are those of `highestOfCycle`. */
const cell = { startedMs: 3 } as const;

/** From its start to full speed, s: common practice, no source. */
const rampS = 5;
/** After the ramp the rise is still counted from a pressure of before it, for the length of a step. */
const runUpMs = 1000 * (rampS + stepWindowTicks);

/**
 * A standby source has started within the last ten seconds and is not seen to carry yet, and what comes in is no more than it
 * carries: by the gas that collects in the separator beyond what the other source takes. Once a second.
 * False where its capacity or the room of the gas is not known, and where it has run for longer: then nothing is to be waited for.
 * @param risePa of the separator pressure within the length of a step
 */
export function standbyRunsUp(context: UnitContext, risePa: number): boolean {
  const { nowMs, slots, state } = context;
  const running = usable(state, slots.vacuumStandbyRunning);
  if (Number.isNaN(running)) return false;
  const startedMs = recall(context, cell.startedMs);
  if (running < 0.5) {
    // Nearly always it stands, and to read is cheaper than to write.
    if (!Number.isNaN(startedMs)) keep(context, cell.startedMs, Number.NaN);
    return false;
  }
  if (Number.isNaN(startedMs)) keep(context, cell.startedMs, nowMs);
  // A clock that was set back makes no start that lasts.
  const ageMs = Number.isNaN(startedMs) ? 0 : Math.abs(nowMs - startedMs);
  if (ageMs >= runUpMs) return false;
  return gasThatCollects(context, risePa) <= usable(state, slots.vacuumCapacity);
}

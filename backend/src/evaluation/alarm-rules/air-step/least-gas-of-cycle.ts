import { keep, recall, usable, type UnitContext } from '../judge-context';
import { cycleOfTanksMs } from '../plant-signs/cycle-of-tanks';

/** Least of the running cycle and of the one before, free m³/s; when the running one began; and the least before a permit was opened. */
const cell = { running: 0, before: 1, beganMs: 2, beforeWork: 3 } as const;

/**
 * Alternating tanks push gas out at each change-over, whatever comes in: the least of a whole cycle is what comes in (common practice:
 * per-cycle minima). Once a second; while no permit is open it is what stands before the work. A second that is not known says nothing.
 */
export function followLeastGas(context: UnitContext): void {
  const { nowMs, permits, slots, state, unitIndex } = context;
  const gas = usable(state, slots.gasLoad);
  if (Number.isNaN(gas)) return;
  const aged = nowMs - recall(context, cell.beganMs);
  const spanMs = cycleOfTanksMs(context);
  if (!(aged <= spanMs)) {
    keep(context, cell.before, aged < 2 * spanMs ? recall(context, cell.running) : Number.NaN);
    keep(context, cell.running, gas);
    keep(context, cell.beganMs, nowMs);
  } else if (!(gas >= recall(context, cell.running))) keep(context, cell.running, gas);
  if (permits.count[unitIndex] === 0) keep(context, cell.beforeWork, recall(context, cell.before));
}

/** Free m³/s; NaN until a whole cycle is known. */
export const leastGas = (context: UnitContext): number => recall(context, cell.before);

/** The same of before the work; NaN where it was not known. */
export const leastBefore = (context: UnitContext): number => recall(context, cell.beforeWork);

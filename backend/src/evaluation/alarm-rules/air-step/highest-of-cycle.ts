import { keep, recall, usable, type UnitContext } from '../judge-context';
import { cycleOfTanksMs } from '../plant-signs/cycle-of-tanks';

/** Highest of the running span and of the one before it, Pa, and when the running one began. */
const cell = { running: 0, before: 1, beganMs: 2 } as const;

/**
 * Alternating tanks lift the separator pressure at each change-over, with every source full. What is more than that stands above the
 * highest of the cycle before, Pa: this gives it; NaN until one cycle is known. Once a second. While the pressure stands above it
 * it is kept, so that what comes in never becomes what is usual.
 * @param abovePa so far above it the pressure is no usual one
 */
export function highestOfCycle(context: UnitContext, abovePa: number, active: boolean): number {
  const { nowMs, slots, state } = context;
  const pressure = usable(state, slots.separatorPressure);
  const before = recall(context, cell.before);
  if (Number.isNaN(pressure) || active || pressure > before + abovePa) return before;
  const spanMs = cycleOfTanksMs(context);
  const running = recall(context, cell.running);
  const aged = nowMs - recall(context, cell.beganMs);
  if (!(aged <= spanMs)) {
    if (aged < 2 * spanMs) keep(context, cell.before, running);
    keep(context, cell.running, pressure);
    keep(context, cell.beganMs, nowMs);
  } else if (!(pressure <= running)) keep(context, cell.running, pressure);
  return recall(context, cell.before);
}

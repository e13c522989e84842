import { keep, recall, usable, type UnitContext } from '../judge-context';
import { cycleOfTanksMs } from '../plant-signs/cycle-of-tanks';

/** Highest of the running span and of the one before it, Pa, when the running one began, and the set point then, Pa. */
const cell = { running: 0, before: 1, beganMs: 2, setPoint: 3 } as const;

/**
 * Alternating tanks lift the separator pressure at each change-over, with every source full. What is more than that stands above the
 * highest of the cycle before, Pa: this gives it; NaN until one cycle is known. Once a second. While the pressure stands above it
 * it is kept, so that what comes in never becomes what is usual; but for a set point that people have raised, which lifts it as much.
 * @param abovePa so far above it the pressure is no usual one
 */
export function highestOfCycle(context: UnitContext, abovePa: number, active: boolean): number {
  const { nowMs, slots, state } = context;
  followSetPoint(context, usable(state, slots.separatorSetPoint));
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

/** A set point that falls lifts nothing: the cycles after it are lower by themselves. */
function followSetPoint(context: UnitContext, setPoint: number): void {
  if (Number.isNaN(setPoint)) return;
  const raised = setPoint - recall(context, cell.setPoint);
  if (raised === 0) return;
  keep(context, cell.setPoint, setPoint);
  if (!(raised > 0)) return;
  keep(context, cell.before, recall(context, cell.before) + raised);
  keep(context, cell.running, recall(context, cell.running) + raised);
}

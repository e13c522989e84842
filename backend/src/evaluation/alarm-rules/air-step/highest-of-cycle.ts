import { keep, recall, usable, type UnitContext } from '../judge-context';
import { cycleOfTanksMs } from '../plant-signs/cycle-of-tanks';

/** Highest of the running span and of the one before it, Pa, and when the running one began. */
const cell = { running: 0, before: 1, beganMs: 2 } as const;

/** A set point that moves by less is a reading that flickers. Own rule. */
const leastMovePa = 500;

/**
 * Alternating tanks lift the separator pressure at each change-over, with every source full. What is more than that stands above the
 * highest of the cycle before, Pa: this gives it; NaN until one cycle is known. Once a second. While the pressure stands above it
 * it is kept, so that what comes in never becomes what is usual; but for a set point that people have raised above those of both spans,
 * which lifts it by that. What stands is no more moved by a set point than by the pressure.
 * @param abovePa so far above it the pressure is no usual one
 */
export function highestOfCycle(context: UnitContext, abovePa: number, active: boolean): number {
  const { air, nowMs, slots, state, unitIndex } = context;
  const setPoint = usable(state, slots.separatorSetPoint);
  if (!active) followSetPoint(context, setPoint);
  const pressure = usable(state, slots.separatorPressure);
  const before = recall(context, cell.before);
  if (Number.isNaN(pressure) || active || pressure > before + abovePa) return before;
  const spanMs = cycleOfTanksMs(context);
  const running = recall(context, cell.running);
  const aged = nowMs - recall(context, cell.beganMs);
  if (!(aged <= spanMs)) {
    if (aged < 2 * spanMs) keep(context, cell.before, running);
    air.setPointBefore[unitIndex] = air.setPointOfSpan[unitIndex] as number;
    air.setPointOfSpan[unitIndex] = setPoint;
    keep(context, cell.running, pressure);
    keep(context, cell.beganMs, nowMs);
  } else if (!(pressure <= running)) keep(context, cell.running, pressure);
  return recall(context, cell.before);
}

/** A set point that falls lifts nothing: the spans after it are lower by themselves, and forget it as they forget their pressures. */
function followSetPoint(context: UnitContext, setPoint: number): void {
  if (Number.isNaN(setPoint)) return;
  const { air, unitIndex } = context;
  const [before, running] = [air.setPointBefore[unitIndex] as number, air.setPointOfSpan[unitIndex] as number];
  const known = Number.isNaN(before) ? running : Number.isNaN(running) ? before : Math.max(before, running);
  if (Number.isNaN(known)) air.setPointOfSpan[unitIndex] = setPoint;
  const raised = setPoint - known;
  if (!(raised >= leastMovePa)) return;
  keep(context, cell.before, recall(context, cell.before) + raised);
  keep(context, cell.running, recall(context, cell.running) + raised);
  air.setPointBefore[unitIndex] = setPoint;
  air.setPointOfSpan[unitIndex] = setPoint;
}

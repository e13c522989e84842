import { judgeAbove } from '../above';
import { clockDay } from '../details/clock-time';
import { freeAirText, joined } from '../details/quantity-text';
import type { UnitEntry } from '../entry';
import { guard, usable, type UnitContext } from '../judge-context';
import { followLeastGas, leastBefore, leastGas } from '../air-step/least-gas-of-cycle';
import { Verdict } from '../verdict';

/**
 * More air comes in than the open permits of the unit expect, or a permit is overdue. `limit`: free m³/s above that; twice the
 * uncertainty of the gas load where that is more. With alternating tanks it is known after two spans of `cycleOfTanksMs` at the
 * latest, two minutes for a cycle of 49 s (a least over spans that slide would save up to one): a change-over pushes out 40 to 280 free L/min for half of each cycle
 * (unit S6 of the simulator), so that only the rest between says what comes in, and the least of a span counts once all of it lies
 * after the opening: at most one span that began before, and one whole. AIR-1 tells the step itself within seconds. What an overdue permit expected counts no more. Not suppressed by anything.
 */
export const permit1: UnitEntry = {
  id: 'PERMIT-1',
  title: 'More air than the open permit expects, or a permit is overdue',
  cause: 'A second opening elsewhere, a larger one than planned, or work that was finished and not signed off.',
  consequence: 'A leak goes unseen behind the permit, and the reserve is smaller than people think.',
  action: {
    a: 'Ask whoever holds the permit; look for a second opening, first at the other branches. When the work is over, close the permit.',
    b: 'Air above the permit began up to two cycles of the tanks before. Ask whoever holds the permit; look for a second opening, first at the other branches. When the work is over, close the permit.',
    c: 'Ask whoever holds the permit; look for a second opening, first at the other branches. When the work is over, close the permit.',
  },
  confirm: 'Compare the flows and return pressures of the other branches with those of before the work.',
  timeToRespondS: 10 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 10 / 60_000, deadband: 3 / 60_000, onDelayMs: 3000, offDelayMs: 30_000 },
  unitOfMeasure: 'm3/s',
  basis:
    'The limit is moved by the permit, not suppressed. What a coupling lets in can be told to a few free L/min; half of what AIR-1 lets pass is a second opening. With alternating tanks the least of a cycle is judged: it rests near nothing between change-overs, and shows some tens of free L/min only where they come in all the time: 24 where 60 do, so that less than about 45 more than planned is not told here; AIR-1 tells its step.',
  feeds: ['vacuum.exhaustFlow', 'vacuum.bleedFlow', 'vacuum.speed', 'vacuum.running', 'separator.pressure'],
  offInModes: [],
  offWhenInferred: false,
  judge(context, limits, active, finding) {
    const { permits, slots, state, unitIndex } = context;
    if (context.unit.shape === 'b') followLeastGas(context);
    if (permits.count[unitIndex] === 0) {
      finding.verdict = Verdict.no;
      return;
    }
    const expected = expectedGas(context);
    const margin = Math.max(limits.limit, guard(state, slots.gasLoad));
    finding.value = gasNow(context);
    finding.limit = expected + margin;
    finding.verdict = isOverdue(context)
      ? Verdict.yes
      : judgeAbove(finding.value, finding.limit, limits.deadband, active);
  },
  detail(context) {
    const { nowMs, permits, site, unitIndex } = context;
    const due = permits.dueMs[unitIndex] as number;
    const gas = gasNow(context);
    const excess = gas - expectedGas(context);
    return joined(
      isOverdue(context) ? `A permit is overdue since ${clockDay(due, nowMs, site.timeZone)}.` : null,
      excess > worthTelling ? `${freeAirText(excess)} more than the permit: ${freeAirText(gas)} come in.` : null,
    );
  },
};

/** Free m³/s: 1 L/min. */
const worthTelling = 1 / 60_000;

/** What comes in now; with alternating tanks the least of a cycle, as each change-over moves ten times as much. */
const gasNow = (context: UnitContext): number =>
  context.unit.shape === 'b' ? leastGas(context) : usable(context.state, context.slots.gasLoad);

/** Gas load of before the work, and what the permits expect on top of it. Without a baseline, all there is counts. */
export function expectedGas(context: UnitContext): number {
  const { permits, unit, unitIndex } = context;
  const baseline = unit.shape === 'b' ? leastBefore(context) : (permits.baselineM3PerS[unitIndex] as number);
  return (Number.isNaN(baseline) ? 0 : baseline) + (permits.expectedM3PerS[unitIndex] as number);
}

const isOverdue = ({ nowMs, permits, unitIndex }: UnitContext): boolean =>
  nowMs >= (permits.dueMs[unitIndex] as number);

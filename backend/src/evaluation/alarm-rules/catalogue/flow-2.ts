import { judgeBelow } from '../below';
import type { UnitEntry } from '../entry';
import { keep, recall, usable, type UnitContext } from '../judge-context';
import { chipsLoaded } from '../plant-signs/chips-loaded';
import { stopWasMeant } from '../plant-signs/pump-wanted';
import { rideThroughText } from '../plant-signs/ride-through-text';
import { Verdict } from '../verdict';
import { stoppedModes } from '../modes-of-rules';

/**
 * Flow lost with chips loaded. `limit` and `deadband` are shares of the rated flow. Off where a mode point says
 * that the loop is stopped or filling; not off on feedback alone: a tripped pump looks like a stop, and is the case.
 */
export const flow2: UnitEntry = {
  id: 'FLOW-2',
  title: 'Loop flow lost while chips are loaded',
  cause: 'Pump tripped, supply tank empty, vacuum lost, a valve shut, or power lost.',
  consequence: 'Chips throttle in seconds to a minute, then trip.',
  action: {
    a: 'Confirm that the standby transfer pump and vacuum source run; if flow does not come back at once, shed load.',
    b: 'Confirm that the tanks still change over and the vacuum source runs; if flow does not come back at once, shed load.',
    c: 'Confirm that the standby circulation pump runs; if flow does not come back at once, shed load.',
  },
  confirm: 'Look at the branch flows and at the chip temperatures: they rise within seconds if it is so.',
  timeToRespondS: 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 0.5, deadband: 0.05, onDelayMs: 3000, offDelayMs: 5000 },
  unitOfMeasure: 'm3/s',
  basis: 'Ride-through of chips on stored water alone is under a minute (energy balance of the water in the plates).',
  feeds: ['loop.flow', 'plate.<id>.power', 'branch.<id>.power'],
  offInModes: stoppedModes,
  offWhenInferred: false,
  judge(context, limits, active, finding) {
    const rated = context.unit.design.ratedFlowM3PerS;
    finding.value = usable(context.state, context.slots.loopFlow);
    finding.limit = limits.limit * rated;
    finding.verdict = judgeBelow(finding.value, finding.limit, limits.deadband * rated, active);
    if (finding.verdict === Verdict.yes) finding.verdict = whileLoaded(context, active);
    else if (isStarting(context) && finding.verdict === Verdict.no) keep(context, cell.flowedMs, context.nowMs);
  },
  detail: (context) => rideThroughText(context, 'Without flow'),
};

/** The last second of a start in which there was flow. */
const cell = { flowedMs: 0 } as const;

const isStarting = ({ mode, modeTold }: UnitContext): boolean => modeTold && mode === 'starting';

/**
 * Unknown chip power counts as loaded, unless the loop was stopped on purpose, where it is not known whether it was it holds; and
 * unless it is started and has had no flow yet, as load comes last.
 */
function whileLoaded(context: UnitContext, active: boolean): Verdict {
  const loaded = chipsLoaded(context);
  if (loaded !== null) return loaded ? Verdict.yes : Verdict.no;
  if (active) return Verdict.hold;
  if (isStarting(context)) return hasFlowed(context) ? Verdict.yes : Verdict.no;
  if (!stoppedModes.includes(context.mode)) return Verdict.yes;
  const meant = stopWasMeant(context);
  if (meant === null) return Verdict.hold;
  return meant ? Verdict.no : Verdict.yes;
}

const hasFlowed = (context: UnitContext): boolean =>
  recall(context, cell.flowedMs) >= (context.plant.runs.startsSinceMs[context.unitIndex] as number);

import { anyOf } from '../any-of';
import { judgeAbove } from '../above';
import type { UnitEntry } from '../entry';
import { usable, type UnitContext } from '../judge-context';
import { durationText } from '../plant-signs/ride-through-text';
import { Verdict } from '../verdict';

/** A standby is said not to be available, or has not run for longer than `limit`, s. */
export const pump2: UnitEntry = {
  id: 'PUMP-2',
  title: 'No standby, or a standby that has not been proved',
  cause: 'In maintenance, tripped, switched off, or not changed over for longer than the site allows.',
  consequence: 'One failure away from losing the flow or the vacuum.',
  action: {
    a: 'Restore the standby transfer pump or vacuum source, and prove the change-over while the first one still runs.',
    b: 'Restore the standby pump or vacuum source, and prove the change-over between two transfers while the first one still runs.',
    c: 'Restore the standby circulation pump or vacuum source, and prove the change-over while the first one still runs.',
  },
  confirm: 'Look at the switch and the breaker of the standby, and at the record of change-overs.',
  timeToRespondS: 4 * 60 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 7 * 86_400, deadband: 0, onDelayMs: 60_000, offDelayMs: 60_000 },
  unitOfMeasure: 's',
  basis: 'A change-over a week is common practice. It is counted from when Ebbline began to watch.',
  feeds: ['pump.available', 'vacuum.available'],
  offInModes: [],
  offWhenInferred: false,
  applies: (_unit, slots) =>
    [slots.pumpAvailable, slots.vacuumAvailable, slots.pumpStandbyRunning, slots.vacuumStandbyRunning].some(
      (slot) => slot >= 0,
    ),
  judge(context, limits, active, finding) {
    const { runs } = context.plant;
    const pump = unprovedS(context, runs.pumpStandbyProvedMs, context.slots.pumpStandbyRunning);
    const vacuum = unprovedS(context, runs.vacuumStandbyProvedMs, context.slots.vacuumStandbyRunning);
    finding.value = Math.max(pump, vacuum);
    finding.limit = limits.limit;
    const unproved = anyOf(
      judgeAbove(pump, limits.limit, limits.deadband, active),
      judgeAbove(vacuum, limits.limit, limits.deadband, active),
    );
    const missing = anyOf(
      judgeMissing(context, context.slots.pumpAvailable),
      judgeMissing(context, context.slots.vacuumAvailable),
    );
    finding.verdict = anyOf(unproved, missing);
    finding.where = whatIsMissing(context);
  },
  detail(context) {
    const missing = whatIsMissing(context);
    if (missing !== null) return `Not available: ${missing}.`;
    const { runs } = context.plant;
    const pump = unprovedS(context, runs.pumpStandbyProvedMs, context.slots.pumpStandbyRunning);
    const vacuum = unprovedS(context, runs.vacuumStandbyProvedMs, context.slots.vacuumStandbyRunning);
    if (Number.isNaN(Math.max(pump, vacuum)))
      return 'The standby has not been seen to run since Ebbline began to watch.';
    const name = !(vacuum > pump) ? 'pump' : 'vacuum source';
    return `The standby ${name} has not been seen to run for ${durationText(Math.max(pump, vacuum))}.`;
  },
};

/** 0 where the unit has no such feedback: what can't be seen is not judged. NaN where since when is not known. */
function unprovedS({ nowMs, unitIndex }: UnitContext, provedMs: Float64Array, slot: number): number {
  return slot < 0 ? 0 : (nowMs - (provedMs[unitIndex] as number)) / 1000;
}

function judgeMissing({ state }: UnitContext, slot: number): Verdict {
  if (slot < 0) return Verdict.no;
  const available = usable(state, slot);
  if (Number.isNaN(available)) return Verdict.hold;
  return available < 0.5 ? Verdict.yes : Verdict.no;
}

function whatIsMissing({ slots, state }: UnitContext): string | null {
  const pump = usable(state, slots.pumpAvailable) < 0.5;
  const vacuum = usable(state, slots.vacuumAvailable) < 0.5;
  if (pump && vacuum) return 'standby pump and standby vacuum source';
  if (pump) return 'standby pump';
  return vacuum ? 'standby vacuum source' : null;
}

import { anyOf } from '../any-of';
import { judgeAbove } from '../above';
import type { UnitEntry } from '../entry';
import { keep, recall, usable, type UnitContext } from '../judge-context';
import { joined } from '../details/quantity-text';
import { durationText } from '../plant-signs/ride-through-text';
import { placesToTell } from '../told-places';
import { Verdict } from '../verdict';

/** A standby is said not to be available and does not run, or has not run for longer than `limit`, s. */
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
  basis:
    'A change-over a week is common practice. It is counted from when Ebbline began to watch. A standby that runs is there, whatever its ready contact says.',
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
    const pumpUnproved = judgeAbove(pump, limits.limit, limits.deadband, active);
    const vacuumUnproved = judgeAbove(vacuum, limits.limit, limits.deadband, active);
    const pumpMissing = judgeMissing(context, context.slots.pumpAvailable, context.slots.pumpStandbyRunning);
    const vacuumMissing = judgeMissing(context, context.slots.vacuumAvailable, context.slots.vacuumStandbyRunning);
    finding.verdict = anyOf(anyOf(pumpUnproved, vacuumUnproved), anyOf(pumpMissing, vacuumMissing));
    finding.where = whatIsMissing(context);
    const shows = ofPump * faultOf(pumpMissing, pumpUnproved) + ofVacuum * faultOf(vacuumMissing, vacuumUnproved);
    if (recall(context, cell.shows) !== shows) keep(context, cell.shows, shows);
    const news = placesToTell(context, cell, shows, limits.onDelayMs, active);
    if (news === 0) return;
    finding.again = true;
    const isMissingNew = (news & ((ofPump + ofVacuum) * missing)) !== 0;
    if (!isMissingNew) finding.where = nameOf((news & (ofPump * unproved)) !== 0, (news & (ofVacuum * unproved)) !== 0);
  },
  detail(context) {
    const gone = whatIsMissing(context);
    const { runs } = context.plant;
    const pump = unprovedS(context, runs.pumpStandbyProvedMs, context.slots.pumpStandbyRunning);
    const vacuum = unprovedS(context, runs.vacuumStandbyProvedMs, context.slots.vacuumStandbyRunning);
    const shows = recall(context, cell.shows);
    const rests = joined(
      isOnlyUnproved(shows, ofPump) ? notSeen('pump', pump) : null,
      isOnlyUnproved(shows, ofVacuum) ? notSeen('vacuum source', vacuum) : null,
    );
    if (gone !== null) return joined(`Not available: ${gone}.`, rests);
    if (rests !== null) return rests;
    if (Number.isNaN(Math.max(pump, vacuum)))
      return 'The standby has not been seen to run since Ebbline began to watch.';
    return vacuum > pump ? notSeen('vacuum source', vacuum) : notSeen('pump', pump);
  },
};

const cell = { told: 0, newSinceMs: 1, shows: 2 } as const;

/** What may be wrong with a standby, and of which: a set of bits. */
const missing = 1;
const unproved = 2;
const ofPump = 1;
const ofVacuum = 4;

/** One that is missing does not run either: that it is not proved is then no news. */
const faultOf = (isMissing: Verdict, isUnproved: Verdict): number =>
  isMissing === Verdict.yes ? missing + unproved : isUnproved === Verdict.yes ? unproved : 0;

const isOnlyUnproved = (shows: number, machine: number): boolean =>
  (shows & (machine * (missing + unproved))) === machine * unproved;

const notSeen = (name: string, forS: number): string =>
  `The standby ${name} has not been seen to run for ${durationText(forS)}.`;

/** 0 where the unit has no such feedback: what can't be seen is not judged. NaN where since when is not known. */
function unprovedS({ nowMs, unitIndex }: UnitContext, provedMs: Float64Array, slot: number): number {
  return slot < 0 ? 0 : (nowMs - (provedMs[unitIndex] as number)) / 1000;
}

/** Many a contact that says "ready" drops as the machine starts: one that runs is there. */
function judgeMissing({ state }: UnitContext, availableSlot: number, runningSlot: number): Verdict {
  if (availableSlot < 0) return Verdict.no;
  const available = usable(state, availableSlot);
  const running = usable(state, runningSlot);
  if (available >= 0.5 || running >= 0.5) return Verdict.no;
  return Number.isNaN(available) || (Number.isNaN(running) && runningSlot >= 0) ? Verdict.hold : Verdict.yes;
}

function whatIsMissing({ slots, state }: UnitContext): string | null {
  const isMissing = (available: number, running: number): boolean =>
    usable(state, available) < 0.5 && !(usable(state, running) >= 0.5);
  const pump = isMissing(slots.pumpAvailable, slots.pumpStandbyRunning);
  const vacuum = isMissing(slots.vacuumAvailable, slots.vacuumStandbyRunning);
  return nameOf(pump, vacuum);
}

function nameOf(pump: boolean, vacuum: boolean): string | null {
  if (pump && vacuum) return 'standby pump and standby vacuum source';
  if (pump) return 'standby pump';
  return vacuum ? 'standby vacuum source' : null;
}

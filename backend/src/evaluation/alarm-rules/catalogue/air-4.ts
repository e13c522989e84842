import { AirSignal } from '../air-step/air-memory';
import { allFull } from '../air-step/all-full';
import { highestOfCycle } from '../air-step/highest-of-cycle';
import { standbyWaits } from '../air-step/standby-is-reserve';
import { standbyRunsUp } from '../air-step/standby-runs-up';
import { pressureText } from '../details/quantity-text';
import type { Limits, UnitEntry } from '../entry';
import { usable, type UnitContext } from '../judge-context';
import { oldEnd, stepBefore, stepOf } from '../step';
import { Verdict } from '../verdict';

/**
 * More air comes in than all sources carry: the separator pressure rises with every source full, or tripped. `limit`: Pa within five seconds.
 * Raised after three seconds: a cut main has run the separator up to ambient within some more, and then its rise is over; it leaves
 * a minute to respond. With alternating tanks it has to rise above what their change-overs do; until those are known, for longer than
 * one takes; and never by what passes from tank to tank. A standby that has just started is given its run-up of ten seconds, unless
 * more comes in than it will carry: VSRC-2 tells of it, and the margin limits wait for nothing. One that stands is reserve until it has failed to start. Once raised it stands until the pressure falls again, or a source has something left. Never off.
 */
export const air4: UnitEntry = {
  id: 'AIR-4',
  title: 'More air comes in than the vacuum sources carry',
  cause:
    'An opening larger than the sources carry, such as a cut main; or sources failing, or a standby that does not start, while a hose is open.',
  consequence:
    'All flow is lost within tens of seconds. The low pipes of the return then stand above ambient: water comes out of any opening below them.',
  action: {
    a: 'Power off the servers of the rack with the largest opening and isolate it; keep every vacuum source running, and start by hand a standby that has not started. Prepare to shed the load of the whole loop. Keep clear of water near live equipment.',
    b: 'Power off the servers of the rack with the largest opening and isolate it; keep every vacuum source and the tank change-over running, and start by hand a standby that has not started. Prepare to shed the load of the whole loop. Keep clear of water near live equipment.',
    c: 'Power off the servers of the rack with the largest opening and isolate it; keep every vacuum source of the reservoir running, and start by hand a standby that has not started. Prepare to shed the load of the whole loop. Keep clear of water near live equipment.',
  },
  confirm:
    'Separator pressure runs up although the sources are full, or none is left that starts. A pump that has tripped leaves it as it is.',
  timeToRespondS: 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 300, deadband: 100, onDelayMs: 3000, offDelayMs: 10_000 },
  unitOfMeasure: 'Pa',
  basis:
    'Own rule: a weak source lets the pressure rise by 0.1 kPa within five seconds, a cut 25 mm main by more than 20 kPa (choked flow into 510 L). A standby that stands while the separator is 4 kPa above its set point for eight seconds and two readings of its run contact, or 20 kPa above it, counts as not started.',
  feeds: ['separator.pressure', 'vacuum.speed', 'vacuum.running'],
  offInModes: [],
  offWhenInferred: false,
  applies: (_unit, slots) => slots.separatorPressure >= 0 && (slots.vacuumReserveAll >= 0 || slots.vacuumSpeed >= 0),
  judge(context, limits, active, finding) {
    const signal = (context.air.firstSignal[context.unitIndex] as number) + AirSignal.separatorPressure;
    const rise = stepOf(context.air.rings, signal);
    finding.value = usable(context.state, context.slots.separatorPressure);
    finding.limit = oldEnd(context.air.rings, signal) + limits.limit;
    const full = allFull(context, signal, limits, active);
    const ofTanks = context.unit.shape === 'b';
    const usual = ofTanks ? highestOfCycle(context, limits.limit, active) : Number.NaN;
    const waits = standbyRunsUp(context, rise) && !active;
    if (Number.isNaN(rise) || full === null) return;
    const rises = ofTanks ? risesWithTanks(context, signal, usual, limits, active) : risesNow(rise, limits, active);
    finding.verdict = full && rises && !waits ? Verdict.yes : Verdict.no;
    if (finding.verdict === Verdict.yes)
      finding.where = context.unit.branches[context.air.namedBranch[context.unitIndex] as number]?.name ?? null;
  },
  detail(context) {
    const { air, slots, state, unitIndex } = context;
    const pressure = usable(state, slots.separatorPressure);
    if (Number.isNaN(pressure)) return null;
    const rise = stepOf(air.rings, (air.firstSignal[unitIndex] as number) + AirSignal.separatorPressure);
    const rising = rise > 0 ? ` and rising by ${pressureText(rise)} in five seconds` : '';
    return `Separator at ${pressureText(pressure)}${rising}, ${sourcesText(context)}.`;
  },
};

function sourcesText(context: UnitContext): string {
  const leadStands = usable(context.state, context.slots.vacuumRunning) < 0.5;
  if (standbyWaits(context))
    return `the lead source ${leadStands ? 'stands' : 'is full'} and the standby is not seen to run`;
  return leadStands ? 'the lead source stands and no other has anything left' : 'all sources full';
}

const risesNow = (rise: number, { deadband, limit }: Limits, active: boolean): boolean =>
  active ? rise > -deadband : rise > limit;

/**
 * Beyond what a change-over of the tanks does; it stands until the pressure is back there. Before one is known: a rise that goes on
 * for twice as long as the one to three seconds of a change-over (common practice, no source), until it falls.
 */
function risesWithTanks(context: UnitContext, signal: number, usual: number, limits: Limits, active: boolean): boolean {
  const { rings } = context.air;
  if (!active && tanksPassThrough(context)) return false;
  const rise = stepOf(rings, signal);
  const pressure = usable(context.state, context.slots.separatorPressure);
  if (!Number.isNaN(usual))
    return active ? pressure > usual : risesNow(rise, limits, false) && pressure > usual + limits.limit;
  return risesNow(rise, limits, active) && (active || stepBefore(rings, signal) > limits.limit);
}

/** The supply tank counts as let down this far below its set point, and as open to the separator so near to it, Pa. Own rules. */
const letDownPa = 10_000;
const throughPa = 5_000;

/**
 * The tank that gives water has come down to the separator: its gas goes through the change-over valves into it, and loads the
 * sources. Air of an opening lifts the separator and leaves that tank at its set point.
 */
function tanksPassThrough({ slots, state }: UnitContext): boolean {
  const supply = usable(state, slots.supplyTankPressure);
  const isLetDown = supply < usable(state, slots.supplyTankSetPoint) - letDownPa;
  return isLetDown && Math.abs(supply - usable(state, slots.separatorPressure)) < throughPa;
}

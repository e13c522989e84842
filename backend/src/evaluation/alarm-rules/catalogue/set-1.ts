import { anyOf } from '../any-of';
import { judgeDiscrete } from '../discrete';
import { everyShape, type UnitEntry } from '../entry';
import { keep, recall, usable, type UnitContext } from '../judge-context';
import { SetPoint, followSetPoint, setPointCount } from '../plant-signs/set-point-memory';
import { Verdict } from '../verdict';

const cell = { seen: 0, firstLookMs: 1 } as const;

/** A new set point counts as the known one after so long. */
const rememberMs = 3_600_000;

const watched = [
  {
    place: SetPoint.supply,
    name: 'supply temperature',
    slot: 'supplySetPoint',
    least: 0.2,
    digits: 1,
    scale: 1,
    unit: '°C',
  },
  {
    place: SetPoint.supplyTank,
    name: 'supply tank pressure',
    slot: 'supplyTankSetPoint',
    least: 200,
    digits: 1,
    scale: 1000,
    unit: 'kPa',
  },
  {
    place: SetPoint.separator,
    name: 'separator pressure',
    slot: 'separatorSetPoint',
    least: 200,
    digits: 1,
    scale: 1000,
    unit: 'kPa',
  },
] as const;

/** People have changed the line-up: a set point is another than an hour ago, or something stands in hand, bypass or local. */
export const set1: UnitEntry = {
  id: 'SET-1',
  title: 'Set point changed, or in hand, bypass or local',
  cause: 'Someone has changed it, or left it so after work.',
  consequence: 'The plant is not lined up as everyone believes; controls do not answer as expected.',
  action: everyShape('Ask who did it and why; put it back, or note it in the shift log with when it is to go back.'),
  confirm: 'Look at the unit’s own panel.',
  timeToRespondS: 60 * 60,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: 1, deadband: 0, onDelayMs: 2000, offDelayMs: 2000 },
  unitOfMeasure: null,
  basis: 'Discrete; a controlled quantity hides its fault, so what it is told is watched itself.',
  feeds: ['control.manual', 'supply.setPoint', 'supplyTank.setPoint', 'separator.setPoint'],
  offInModes: [],
  offWhenInferred: false,
  applies: (_unit, slots) =>
    [slots.controlManual, slots.supplySetPoint, slots.supplyTankSetPoint, slots.separatorSetPoint].some(
      (slot) => slot >= 0,
    ),
  judge(context, _limits, active, finding) {
    const { controlManual } = context.slots;
    let verdict = controlManual < 0 ? Verdict.no : judgeDiscrete(usable(context.state, controlManual));
    for (const one of watched) verdict = anyOf(verdict, follow(context, one));
    finding.verdict = verdict === Verdict.no && active && mayStillCount(context) ? Verdict.hold : verdict;
    if (verdict === Verdict.yes) keep(context, cell.seen, 1);
  },
  detail(context) {
    const said = watched.flatMap((one) => changeText(context, one));
    if (usable(context.state, context.slots.controlManual) >= 0.5) said.push('In hand, bypassed or local.');
    return said.length === 0 ? null : said.join(' ');
  },
};

/**
 * The change was seen before a restart, which took what the set point had been: then it counts for the time that a change does
 * from the first look on.
 */
function mayStillCount(context: UnitContext): boolean {
  if (recall(context, cell.seen) === 1) return false;
  if (Number.isNaN(recall(context, cell.firstLookMs))) keep(context, cell.firstLookMs, context.nowMs);
  return context.nowMs - recall(context, cell.firstLookMs) < rememberMs;
}

type Watched = (typeof watched)[number];

function follow({ nowMs, plant, slots, state, unitIndex }: UnitContext, one: Watched): Verdict {
  const slot = slots[one.slot];
  if (slot < 0) return Verdict.no;
  const place = unitIndex * setPointCount + one.place;
  return followSetPoint(plant.setPoints, place, usable(state, slot), one.least, nowMs, rememberMs);
}

function changeText({ plant, slots, state, unitIndex }: UnitContext, one: Watched): string[] {
  const place = unitIndex * setPointCount + one.place;
  if (Number.isNaN(plant.setPoints.changedMs[place])) return [];
  const text = (value: number): string => (value / one.scale).toFixed(one.digits);
  const from = plant.setPoints.known[place] as number;
  return [`Set point of ${one.name}: ${text(from)} → ${text(usable(state, slots[one.slot]))} ${one.unit}.`];
}

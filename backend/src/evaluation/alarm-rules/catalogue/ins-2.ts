import { standardGravityMPerS2 } from '@ebbline/shared/units/constants';
import { Reference } from '../../site/compiled-site';
import { everyShape, type UnitEntry } from '../entry';
import type { Following } from '../follow-memory';
import { judgeAbove } from '../above';
import { usable, type UnitContext } from '../judge-context';
import { pressureText } from '../details/quantity-text';
import { stoppedModes } from '../modes-of-rules';
import { Verdict } from '../verdict';

/** Watched for so long at least, minutes, while the barometer moved by so much (deviation), Pa: own rules. */
const leastMinutes = 180;
const leastMovedPa = 250;
/** Nearly all of what the sensor does is what the barometer does. Own rule. */
const leastCorrelation = 0.9;
/** More than this of the barometer is something else that happens to fall with it. Own rule. */
const mostSlope = 1.5;
/** Loop water within ±1 %, kg/m³. */
const waterKgPerM3 = 990;

/** Sensors of a unit that are compared, and the one on the same water that each is compared with. */
export const comparedSensors = ['supply', 'return'] as const;
type Compared = (typeof comparedSensors)[number];

/**
 * A gauge sensor that no longer feels the room: against another sensor on the same water it moves as the barometer does, by at
 * least `limit` of it, over hours. A gauge sensor with its vent plugged counts from the air shut in behind its membrane; who
 * adds today's barometer gets an absolute pressure that follows it (slope 1), though the loop stands still. Against a second
 * gauge sensor the sign tells which of the two it is. Needs a barometer, a gauge sensor at the main and the pressure of
 * the tank at its end; nothing is known on calm days.
 */
export const ins2: UnitEntry = {
  id: 'INS-2',
  title: 'A pressure sensor follows the barometer',
  cause: 'The vent of a gauge sensor is plugged, wet or kinked: it counts from the air shut in behind its membrane.',
  consequence:
    'Its pressure is off by as much as the barometer has moved since; a margin that rests on it does not show a low.',
  action: everyShape(
    'Use the pressure of the tank in its place, and have the breather opening and tube of the named sensor cleared.',
  ),
  confirm: 'Compare it with a hand instrument; a stopped loop that stands at ambient pressure must read zero there.',
  timeToRespondS: 86_400,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: 0.6, deadband: 0.2, onDelayMs: 10 * 60_000, offDelayMs: 3_600_000 },
  unitOfMeasure: '1',
  basis: 'Own rule: slope of a line through means of a minute, faded over six hours. A sealed gauge has the slope 1.',
  feeds: ['supply.pressure', 'return.pressure', 'supplyTank.pressure', 'separator.pressure', 'ambient.pressure'],
  offInModes: stoppedModes,
  offWhenInferred: true,
  applies: (_unit, slots) =>
    (slots.supplyPressure >= 0 && slots.supplyTankPressure >= 0) ||
    (slots.returnPressure >= 0 && slots.separatorPressure >= 0),
  judge(context, limits, active, finding) {
    sampleFollowing(context);
    finding.limit = limits.limit;
    finding.verdict = Verdict.no;
    for (const which of comparedSensors) {
      const [verdict, point] = judgeSensor(context, which, limits.limit, limits.deadband, active);
      if (verdict === Verdict.no || finding.verdict === Verdict.yes) continue;
      finding.verdict = verdict;
      if (verdict !== Verdict.yes) continue;
      finding.value = Math.abs(line.slope);
      finding.where = point;
    }
  },
  detail(context) {
    for (const which of comparedSensors) {
      const [verdict, point] = judgeSensor(context, which, ins2.defaults.limit, ins2.defaults.deadband, true);
      if (verdict !== Verdict.yes) continue;
      const moved = pressureText(Math.abs(line.slope) * line.barometerPa * 2);
      return `${point} follows the barometer: of some ${pressureText(line.barometerPa * 2)} that the barometer moved in the last hours it took up ${moved}, and the tank’s pressure did not. Probably its vent is plugged.`;
    }
    return null;
  },
};

/** Filled anew by each look. */
const line: Following = { minutes: 0, barometerPa: Number.NaN, slope: Number.NaN, correlation: Number.NaN };

function judgeSensor(
  context: UnitContext,
  which: Compared,
  limit: number,
  deadband: number,
  active: boolean,
): readonly [verdict: Verdict, point: string] {
  const { follow, site, slots, unitIndex } = context;
  const sensor = which === 'supply' ? slots.supplyPressure : slots.returnPressure;
  const other = which === 'supply' ? slots.supplyTankPressure : slots.separatorPressure;
  if (sensor < 0 || other < 0) return [Verdict.no, ''];
  follow.look(unitIndex * comparedSensors.length + comparedSensors.indexOf(which), line);
  const suspect = line.slope > 0 ? sensor : other;
  if (site.slots.reference[suspect] !== Reference.gauge) return [Verdict.no, ''];
  // Calm air says nothing: neither that it follows nor that it does so no more.
  if (line.minutes < leastMinutes || !(line.barometerPa >= leastMovedPa)) return [Verdict.hold, ''];
  const share = Math.abs(line.slope);
  const isFollowing = Math.abs(line.correlation) >= leastCorrelation && share <= mostSlope;
  return [isFollowing ? judgeAbove(share, limit, deadband, active) : Verdict.no, site.slots.pointId[suspect] ?? ''];
}

/** Takes this second's samples of both. */
function sampleFollowing(context: UnitContext): void {
  const { follow, nowMs, site, slots, state, unit, unitIndex } = context;
  const barometer = usable(state, site.halls[unit.hall]?.slot.ambientPressure ?? -1);
  const first = unitIndex * comparedSensors.length;
  if (slots.supplyPressure >= 0 && slots.supplyTankPressure >= 0) {
    const level = slots.supplyTankLevel < 0 ? 0 : usable(state, slots.supplyTankLevel);
    const standsPa = waterKgPerM3 * standardGravityMPerS2 * level;
    const apart = usable(state, slots.supplyPressure) - usable(state, slots.supplyTankPressure) - standsPa;
    follow.push(first, nowMs, barometer, apart);
  }
  if (slots.returnPressure >= 0 && slots.separatorPressure >= 0) {
    const apart = usable(state, slots.returnPressure) - usable(state, slots.separatorPressure);
    follow.push(first + 1, nowMs, barometer, apart);
  }
}

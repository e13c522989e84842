import { judgeAbove } from '../above';
import { clockDay } from '../details/clock-time';
import { flowText, joined, litresText } from '../details/quantity-text';
import { everyShape, type GroupEntry } from '../entry';
import type { GroupContext } from '../group-context';
import { usable } from '../judge-context';
import { followLoopWater } from '../plant-signs/loop-water';
import { refillsOnPurpose } from '../plant-signs/refills-on-purpose';
import { Verdict } from '../verdict';

/** Still rising, m³ within about the last hour; and over where it rises by less. 6 L a day are 0.25 L an hour. Own rule. */
const risingM3 = 0.00012;
const overM3 = 0.00008;
/** Fewer steps after a start say nothing of an alarm that stood before: three hours. */
const leastSteps = 36;

/**
 * Water of all tanks of a loop rises, goes on rising, and no top-up explains it: facility water comes in through the exchanger.
 * `limit`: m³ that ran in; 6 L a day are told within the first day. Steps (air, drain-back, a bucket) do not count: `loopWater`.
 * Steps in which a unit says that it is filled or drained are not looked at, and end nothing.
 * It ends where the water rises no more: between the two rates above, so that it has no deadband of the limit.
 */
export const tank4: GroupEntry = {
  id: 'TANK-4',
  per: 'loop',
  title: 'Water is entering from the facility side',
  cause: 'A pinhole in a plate of the heat exchanger: facility water stands at a higher pressure than the loop.',
  consequence:
    'The tanks fill until water reaches the vacuum source; the inhibitor thins, and conductivity and hardness move.',
  action: everyShape(
    'Let another unit take the load, or shed it; then isolate the heat exchanger and hold it under pressure to find the hole; take a water sample. Do not drain to the mark: that hides it.',
  ),
  confirm:
    'Conductivity drifts towards that of facility water; the top-up meter stands; in-leak and margin are as usual.',
  timeToRespondS: 4 * 3600,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 0.003, deadband: 0, onDelayMs: 15 * 60_000, offDelayMs: 3600_000 },
  unitOfMeasure: 'm3',
  basis: 'Conservation of water. 500 L of loop water swing by 0.2 L a kelvin with their temperature.',
  feeds: ['separator.level', 'supplyTank.level', 'topUp.volume'],
  judge(context, limits, active, finding) {
    const { nowMs, plant } = context;
    const at = placeOf(context);
    const water = refillsOnPurpose(context) ? Number.NaN : waterOf(context);
    const { gained, judged, ofHour } = plant.loopWater;
    followLoopWater(
      plant.loopWater,
      at,
      { waterM3: water, topUpM3PerS: topUpOf(context), conductivity: conductivityOf(context) },
      nowMs,
    );
    finding.value = gained[at] as number;
    finding.limit = limits.limit;
    const hour = ofHour[at] as number;
    const rising = hour >= (active ? overM3 : risingM3);
    if (Number.isNaN(water) || Number.isNaN(hour)) return;
    if (active) {
      if (rising) finding.verdict = Verdict.yes;
      else if ((judged[at] as number) >= leastSteps) finding.verdict = Verdict.no;
      return;
    }
    finding.verdict = rising ? judgeAbove(finding.value, limits.limit, 0, false) : Verdict.no;
  },
  detail(context) {
    const { nowMs, plant, site } = context;
    const at = placeOf(context);
    const gained = plant.loopWater.gained[at] as number;
    const rate = gained / ((nowMs - (plant.loopWater.sinceMs[at] as number)) / 1000);
    const room = roomOf(context);
    if (!(gained > 0) || !(rate > 0)) return null;
    const full = (): string => clockDay(nowMs + (room / rate) * 1000, nowMs, site.timeZone);
    return joined(
      `${litresText(gained)} more than before and no top-up, ${perDay(rate)}.`,
      Number.isFinite(room) ? `Tanks full on ${full()} at that rate.` : null,
      drift(conductivityOf(context), plant.loopWater.conductivityThen[at] as number),
    );
  },
};

/** A loop keeps its cells at its first unit. */
const placeOf = ({ units }: GroupContext): number => units[0] as number;

const perDay = (rate: number): string => (rate * 86_400 > 0.2 ? flowText(rate) : `${litresText(rate * 86_400)} a day`);

/** S/m at 25 °C, of the first unit that measures it: one loop has one water. */
function conductivityOf({ state, unitSlots, units }: GroupContext): number {
  for (const unit of units) {
    const value = usable(state, unitSlots[unit]?.conductivity25 ?? -1);
    if (!Number.isNaN(value)) return value;
  }
  return Number.NaN;
}

/** A change that no meter makes up, as a share. Own rule: makers state ±3 %. */
const driftShare = 0.1;

function drift(now: number, then: number): string | null {
  if (!(Math.abs(now - then) > driftShare * then)) return null;
  return `Conductivity has gone from ${microPerCm(then)} to ${microPerCm(now)} µS/cm meanwhile.`;
}

const microPerCm = (siemensPerM: number): string => (siemensPerM * 10_000).toFixed(0);

function waterOf({ state, unitSlots, units }: GroupContext): number {
  let sum = 0;
  for (const unit of units) sum += usable(state, unitSlots[unit]?.waterVolume ?? -1);
  return sum;
}

/** m³/s of all meters; 0 where a unit has none, or nothing is known of it yet. */
function topUpOf({ state, unitSlots, units }: GroupContext): number {
  let sum = 0;
  for (const unit of units) {
    const rate = usable(state, unitSlots[unit]?.topUpRate ?? -1);
    if (rate > 0) sum += rate;
  }
  return sum;
}

/** Room that all separators of the loop still have, m³; NaN where one is not known. */
function roomOf({ site, state, unitSlots, units }: GroupContext): number {
  let sum = 0;
  for (const unit of units) {
    const design = site.units[unit]?.design;
    const level = usable(state, unitSlots[unit]?.separatorLevel ?? -1);
    const usual = design?.volumes.separatorUsualLevelM ?? Number.NaN;
    sum += (design?.volumes.separatorRoomM3 ?? Number.NaN) - (level - usual) * (design?.separatorAreaM2 ?? Number.NaN);
  }
  return Math.max(0, sum);
}

import { judgeAbove } from '../above';
import { clockDay } from '../details/clock-time';
import { flowText, joined, litresText } from '../details/quantity-text';
import { everyShape, type GroupEntry } from '../entry';
import type { GroupContext } from '../group-context';
import { usable } from '../judge-context';
import { Verdict } from '../verdict';

/** What the rule keeps: mean of the water, where it stood before, since when, and when it was last looked at. */
const cell = { mean: 0, before: 1, sinceMs: 2, lookedMs: 3 } as const;

/** Slosh and tank cycles are gone from the mean of so long, s. Own rule. */
const meanS = 15 * 60;
/** What stood before follows slowly, so that a drift of days shows and one of weeks does not, s. Own rule. */
const beforeS = 2 * 86_400;
/** Nobody leaks in so fast: that is a top-up without a meter, or a step of air, m³/s. 10 L/min. Own rule. */
const noLeakM3PerS = 10 / 60_000;
const longestLookMs = 10_000;

/**
 * Water of all tanks of a loop rises and no top-up explains it: facility water comes in through the exchanger. `limit`: m³ above what
 * stood before, which follows with two days; so a drift of 6 L a day is told within the first day.
 */
export const tank4: GroupEntry = {
  id: 'TANK-4',
  per: 'loop',
  title: 'Water is entering from the facility side',
  cause: 'A pinhole in a plate of the heat exchanger: facility water stands at a higher pressure than the loop.',
  consequence:
    'The tanks fill until water reaches the vacuum source; the inhibitor thins, and conductivity and hardness move.',
  action: everyShape(
    'Let another unit take the load, isolate the heat exchanger and hold it under pressure to find the hole; take a water sample. Do not drain to the mark: that hides it.',
  ),
  confirm:
    'Conductivity drifts towards that of facility water; the top-up meter stands; in-leak and margin are as usual.',
  timeToRespondS: 4 * 3600,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 0.003, deadband: 0.001, onDelayMs: 15 * 60_000, offDelayMs: 3600_000 },
  unitOfMeasure: 'm3',
  basis: 'Conservation of water. 500 L of loop water swing by 0.2 L a kelvin with their temperature.',
  feeds: ['separator.level', 'supplyTank.level', 'topUp.volume'],
  judge(context, limits, active, finding) {
    const { memory, alarm } = context;
    const water = waterOf(context);
    finding.limit = limits.limit;
    if (Number.isNaN(water)) return;
    follow(context, water, active);
    finding.value = memory.get(alarm, cell.mean) - memory.get(alarm, cell.before);
    finding.verdict = Number.isNaN(finding.value)
      ? Verdict.no
      : judgeAbove(finding.value, limits.limit, limits.deadband, active);
  },
  detail(context) {
    const { alarm, memory, nowMs, site } = context;
    const gained = memory.get(alarm, cell.mean) - memory.get(alarm, cell.before);
    const sinceMs = memory.get(alarm, cell.sinceMs);
    const rate = gained / ((nowMs - sinceMs) / 1000);
    const room = roomOf(context);
    if (!(gained > 0) || !(rate > 0)) return null;
    const full = clockDay(nowMs + (room / rate) * 1000, nowMs, site.timeZone);
    return joined(
      `${litresText(gained)} more than before and no top-up, ${perDay(rate)}.`,
      Number.isFinite(room) ? `Tanks full on ${full} at that rate.` : null,
    );
  },
};

const perDay = (rate: number): string => (rate * 86_400 > 0.2 ? flowText(rate) : `${litresText(rate * 86_400)} a day`);

/** A fall starts anew: what went out makes room for nothing. Top-up counts as having stood there before. */
function follow({ alarm, memory, nowMs, ...context }: GroupContext, water: number, active: boolean): void {
  const lookedMs = memory.get(alarm, cell.lookedMs);
  memory.set(alarm, cell.lookedMs, nowMs);
  const elapsedS = (nowMs - lookedMs) / 1000;
  const mean = memory.get(alarm, cell.mean);
  if (Number.isNaN(mean) || !(nowMs - lookedMs <= longestLookMs)) {
    // After a gap nothing tells what was topped up meanwhile, but what stands is still there.
    if (Number.isNaN(mean)) begin(alarm, memory, water, nowMs);
    return;
  }
  const next = mean + (water - mean) * Math.min(1, elapsedS / meanS);
  memory.set(alarm, cell.mean, next);
  const toppedUp = topUpOf({ alarm, memory, nowMs, ...context }) * elapsedS;
  const tooFast = (next - mean) / elapsedS > noLeakM3PerS ? next - mean : 0;
  let before = memory.get(alarm, cell.before) + Math.max(toppedUp, tooFast);
  if (!active) before += (next - before) * Math.min(1, elapsedS / beforeS);
  if (next <= before) {
    before = next;
    memory.set(alarm, cell.sinceMs, nowMs);
  }
  memory.set(alarm, cell.before, before);
}

function begin(alarm: number, memory: GroupContext['memory'], water: number, nowMs: number): void {
  memory.set(alarm, cell.mean, water);
  memory.set(alarm, cell.before, water);
  memory.set(alarm, cell.sinceMs, nowMs);
}

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

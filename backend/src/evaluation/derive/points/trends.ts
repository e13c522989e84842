import { timeToLimit } from '@ebbline/shared/statistics/time-to-limit';
import { coverageFactor } from '@ebbline/shared/uncertainty/combine';
import { coverageFactorOf } from '@ebbline/shared/uncertainty/degrees-of-freedom';
import { reasonBit } from '../../slots/quality-reasons';
import { vacuumMarginGuardPa } from '../derive-constants';
import { fittedPart, writeFitted } from '../few-observations';
import type { Trend } from '../memory/trend';
import type { UnitFrame } from '../unit-frame';
import { uOf } from '../write-point';

/** A trend says nothing of a time further off than so many times what was watched: own rule. */
const furthest = 6;

/** Twice the clean resistance: common practice, no source; FIL-1's limit where the site file sets one. */
const filterLimit = 2;

/** Seconds until the worst vacuum margin less its uncertainty meets the limit of MARGIN-1, by its trend of some hours. */
export function deriveMarginTimeToLimit(frame: UnitFrame): void {
  const { tally, state, plan, memory } = frame;
  const slot = plan.slot.vacuumMarginWorst;
  tally.begin();
  const u = uOf(frame, slot);
  const now = tally.take(state, slot) - (Number.isNaN(u) ? 0 : coverageFactor * u);
  const limit = plan.unit.limits.get('MARGIN-1')?.limit ?? vacuumMarginGuardPa;
  deriveTime(frame, plan.slot.marginTimeToLimit, memory?.marginTrend, now, limit, 'below');
}

/** Seconds until the filter's resistance meets the limit of FIL-1, by its trend of a day or two. */
export function deriveFilterTimeToLimit(frame: UnitFrame): void {
  const { tally, state, plan, memory } = frame;
  tally.begin();
  const now = tally.take(state, plan.slot.filterResistance);
  const limit = plan.unit.limits.get('FIL-1')?.limit ?? filterLimit;
  deriveTime(frame, plan.slot.filterTimeToLimit, memory?.filterTrend, now, limit, 'above');
}

/** Does not apply while nothing surely moves toward the limit, or would meet it only long after what was watched. */
function deriveTime(
  frame: UnitFrame,
  target: number,
  trend: Trend | undefined,
  now: number,
  limit: number,
  side: 'above' | 'below',
): void {
  const { tally, nowMs, elapsedS } = frame;
  const unit = frame.plan.unitIndex;
  if (elapsedS > 0) trend?.push(unit, nowMs, now);
  const slope = trend?.slope[unit] ?? Number.NaN;
  if (Number.isNaN(slope)) note(frame, reasonBit.warming);
  const time = timeToLimit(now, limit, slope, side);
  const furthestS = furthest * (trend?.spanS[unit] ?? 0);
  if (trend?.moves(unit) !== true || time > furthestS) note(frame, reasonBit.notApplicable);
  const steep = side === 'above' ? trend?.upper[unit] : trend?.lower[unit];
  const soonest = timeToLimit(now, limit, steep ?? Number.NaN, side);
  // From the steepest slope of the interval of 95 %, which is k times its standard uncertainty away.
  const degrees = trend?.degreesOfFreedom(unit) ?? Infinity;
  const u = tally.isBad() ? Number.NaN : (time - soonest) / coverageFactorOf(degrees);
  writeFitted(frame, target, time, fittedPart(frame, 'scatter of the trend', u, degrees));
}

/** Water that the tanks of all units on the loop gain over a day, top-ups taken out, m³/s. */
export function deriveLoopWaterTrend(frame: UnitFrame): void {
  const { tally, state, plan, memory, nowMs, elapsedS } = frame;
  const unit = plan.unitIndex;
  tally.begin();
  let water = tally.take(state, plan.slot.loopWaterVolume);
  for (const mate of plan.loopUnits) water -= memory?.topUps.total[mate] ?? 0;
  if (elapsedS > 0) memory?.waterTrend.push(unit, nowMs, water);
  const slope = memory?.waterTrend.slope[unit] ?? Number.NaN;
  if (Number.isNaN(slope)) note(frame, reasonBit.warming);
  const u = memory?.waterTrend.slopeU(unit) ?? Number.NaN;
  const degrees = memory?.waterTrend.degreesOfFreedom(unit) ?? Infinity;
  writeFitted(frame, plan.slot.loopWaterTrend, slope, fittedPart(frame, 'scatter of the trend', u, degrees));
}

/** The first reason is the one that is told. */
function note({ tally }: UnitFrame, reason: number): void {
  if (!tally.isBad()) tally.note(reason, Infinity);
}

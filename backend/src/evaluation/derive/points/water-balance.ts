import { waterBalance, waterBalanceSignificance } from '@ebbline/shared/hydraulics/water-balance';
import { combine2, coverageFactor, rectangular } from '@ebbline/shared/uncertainty/combine';
import { reasonBit } from '../../slots/quality-reasons';
import { fittedPart, fittedPartOf, writeFitted } from '../few-observations';
import type { Trend } from '../memory/trend';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { uOf, writePoint } from '../write-point';
import { hasExhaustWaterLoss } from './exhaust-water-loss';
import { hasWaterVolume } from './water-volumes';

/** Over a day the error of one and the same level sensor moves by no more than this share of its accuracy. Own rule. */
const levelDriftShare = 0.1;
/** Water that is warmer by so much at the end than at the beginning, K, takes more room and is no more water. Own rule. */
const warmerHalfWidthK = 1;
/** Cubic expansion of water at 45 °C, 1/K (IAPWS R6-95, from memory). */
const expansionPerK = 4.2e-4;

export const hasWaterBalance = (plan: UnitPlan): boolean => hasWaterVolume(plan) && hasExhaustWaterLoss(plan);

/**
 * Water that the tanks of all units on the loop gain over a day and that neither top-up nor exhaust explains, m³/s: slope of
 * what is in the tanks, less all that was topped up, plus all that went out as vapour.
 */
export function deriveWaterBalance(frame: UnitFrame): void {
  const { tally, state, plan, memory, nowMs, elapsedS } = frame;
  const unit = plan.unitIndex;
  tally.begin();
  const water = tally.take(state, plan.slot.loopWaterVolume);
  let toppedUp = 0;
  let carriedOut = 0;
  for (const mate of plan.loopUnits) {
    toppedUp += memory?.topUps.total[mate] ?? 0;
    carriedOut += memory?.waterLossM3[mate] ?? 0;
  }
  if (elapsedS > 0) memory?.balanceTrend.push(unit, nowMs, waterBalance(water, toppedUp, carriedOut));
  const trend = memory?.balanceTrend;
  const slope = trend?.slope[unit] ?? Number.NaN;
  if (Number.isNaN(slope) && !tally.isBad()) tally.note(reasonBit.warming, Infinity);
  // Water that nobody counted, and vapour of a unit whose gas is not known, are in it.
  if (!plan.loopWaterCounted) tally.note(reasonBit.inputUncertain, Infinity);
  writeFitted(frame, plan.slot.waterBalance, slope, balanceU(frame, trend));
}

function balanceU(frame: UnitFrame, trend: Trend | undefined): number {
  const { plan } = frame;
  const unit = plan.unitIndex;
  const spanS = Math.max(1, trend?.spanS[unit] ?? 1);
  let squares = 0;
  for (const slot of plan.loopLossSlots)
    if (slot >= 0 && uOf(frame, slot) > 0) squares += fittedPartOf(frame, slot, 1) ** 2;
  const drift = (Math.SQRT2 * levelDriftShare * (uOf(frame, plan.slot.loopWaterVolume) || 0)) / spanS;
  const warmer = (plan.loopWaterM3 * expansionPerK * rectangular(warmerHalfWidthK)) / spanS;
  return combine2(
    combine2(
      fittedPart(
        frame,
        'scatter of the trend',
        trend?.slopeU(unit) ?? Number.NaN,
        trend?.degreesOfFreedom(unit) ?? Infinity,
      ),
      Math.sqrt(squares),
    ),
    combine2(part(frame, 'loopWaterVolume, drift', drift), part(frame, 'water warmer or colder', warmer)),
  );
}

/**
 * How many standard uncertainties it is from nothing, of a normal distribution with the same interval of 95.45 %: beyond 2 it is
 * more than chance, however few the means are.
 */
export function deriveWaterBalanceSignificance(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  tally.begin();
  const balance = tally.take(state, plan.slot.waterBalance);
  const u = (state.expandedUncertainty[plan.slot.waterBalance] ?? Number.NaN) / coverageFactor;
  if (!(u > 0) && !tally.isBad()) tally.note(reasonBit.undefined, Infinity);
  // A number of standard uncertainties has one of its own: 1.
  writePoint(frame, plan.slot.waterBalanceSignificance, waterBalanceSignificance(balance, u), 1);
}

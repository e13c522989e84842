import { timeUntilGone } from '@ebbline/shared/hydraulics/tank-water';
import { combine2 } from '@ebbline/shared/uncertainty/combine';
import { reasonBit } from '../../slots/quality-reasons';
import { fittedPartOf, writeFitted } from '../few-observations';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { uOf } from '../write-point';
import { hasSeparatorRate, hasSupplyTankRate } from './tank-rates';

export const hasTimeToEmpty = (plan: UnitPlan): boolean => hasSupplyTankRate(plan) && hasUsable(plan);
export const hasUsable = ({ unit, slot }: UnitPlan): boolean =>
  unit.design.volumes.supplyTankUsableM3 !== null &&
  unit.design.volumes.supplyTankUsualLevelM !== null &&
  unit.design.supplyTankAreaM2 !== null &&
  slot['supplyTank.level'] >= 0;

export const hasTimeToFull = (plan: UnitPlan): boolean =>
  hasSeparatorRate(plan) &&
  plan.unit.design.volumes.separatorRoomM3 !== null &&
  plan.unit.design.volumes.separatorUsualLevelM !== null;

/** Water that the supply tank may still give off until the loop starves, m³. Takes its level. */
export function usableNow(frame: UnitFrame): number {
  const { volumes, supplyTankAreaM2 } = frame.plan.unit.design;
  const level = frame.tally.take(frame.state, frame.plan.slot['supplyTank.level']);
  return (
    (volumes.supplyTankUsableM3 ?? Number.NaN) +
    (supplyTankAreaM2 ?? Number.NaN) * (level - (volumes.supplyTankUsualLevelM ?? Number.NaN))
  );
}

/** Seconds until the supply tank is empty at the present rate; undefined while nothing surely falls. */
export function deriveTimeToEmpty(frame: UnitFrame): void {
  const { tally, plan } = frame;
  tally.begin();
  const usable = usableNow(frame);
  const usableU = (plan.unit.design.supplyTankAreaM2 ?? Number.NaN) * uOf(frame, plan.slot['supplyTank.level']);
  deriveTime(frame, plan.slot.timeToEmpty, usable, usableU, plan.slot.supplyTankRate, -1);
}

/** Seconds until the separator is full at the present rate; undefined while nothing surely rises. */
export function deriveTimeToFull(frame: UnitFrame): void {
  const { tally, plan, state } = frame;
  const { volumes, separatorAreaM2 } = plan.unit.design;
  const area = separatorAreaM2 ?? Number.NaN;
  tally.begin();
  const level = tally.take(state, plan.slot['separator.level']);
  const room = (volumes.separatorRoomM3 ?? Number.NaN) - area * (level - (volumes.separatorUsualLevelM ?? Number.NaN));
  deriveTime(
    frame,
    plan.slot.timeToFull,
    room,
    area * uOf(frame, plan.slot['separator.level']),
    plan.slot.separatorRate,
    1,
  );
}

/** A time whose interval is wider than this share of it, and than these seconds, says nothing: own rule. */
const widestShare = 0.5;
const widestS = 300;

/**
 * A rate must exceed its expanded uncertainty, or nothing surely moves; a time has to be sure enough to act on, or it is undefined.
 * Where the minute's rate is not, the day's may be: what the loop gains in a day ends in the separator, as the supply tank's
 * level is held.
 */
function deriveTime(
  frame: UnitFrame,
  target: number,
  volume: number,
  volumeU: number,
  rateSlot: number,
  sign: 1 | -1,
): void {
  const { tally, plan } = frame;
  const slow = sign === 1 ? plan.slot.loopWaterTrend : -1;
  const moves = sure(frame, rateSlot, sign) ? rateSlot : sure(frame, slow, sign) ? slow : -1;
  const told = saysSomething(frame, volume, moves, sign) ? moves : saysSomething(frame, volume, slow, sign) ? slow : -1;
  if (told >= 0) {
    writeTime(frame, target, volume, volumeU, told, sign);
    return;
  }
  tally.take(frame.state, moves >= 0 ? moves : rateSlot);
  if (!tally.isBad()) tally.note(reasonBit.undefined, Infinity);
  writeFitted(frame, target, Number.NaN, Number.NaN);
}

/** Whether the interval that the rate's uncertainty gives the time is narrow enough to act on. */
function saysSomething(frame: UnitFrame, volume: number, slot: number, sign: 1 | -1): boolean {
  if (!sure(frame, slot, sign)) return false;
  const rate = Math.abs(frame.state.value[slot] ?? Number.NaN);
  const time = timeUntilGone(volume, rate);
  const half = (time * (frame.state.expandedUncertainty[slot] as number)) / rate;
  // Of a volume that is not known the time is bad anyway, and says why.
  return !(half > Math.max(widestShare * time, widestS));
}

const sure = (frame: UnitFrame, slot: number, sign: 1 | -1): boolean =>
  slot >= 0 && sign * (frame.state.value[slot] ?? Number.NaN) > (frame.state.expandedUncertainty[slot] as number);

function writeTime(frame: UnitFrame, target: number, volume: number, volumeU: number, rateSlot: number, sign: 1 | -1) {
  const rate = sign * frame.tally.take(frame.state, rateSlot);
  const time = timeUntilGone(volume, rate);
  const u = combine2(part(frame, 'level', volumeU / rate), fittedPartOf(frame, rateSlot, time / rate));
  writeFitted(frame, target, time, u);
}

import type { CompiledUnit } from '../../site/compiled-site';
import type { SlotState } from '../../slots/slot-state';
import { keep, recall, usable, type UnitContext } from '../judge-context';

const cell = { told: 0, followed: 1, atMs: 2, awaitedSinceMs: 3 } as const;

/** A sound loop follows a set point that was lowered no slower than this: K/s. Own rule. */
export const followKPerS = 0.5 / 60;
/** A set point that was never heard is waited for so long, and so many of its periods, before the site file speaks for it. Own rule. */
const awaitMs = 60_000;
const awaitPeriods = 3;

/** What the supply is held at, °C: as the unit tells it, else as the site file states it; NaN where nobody says. */
export function supplySetPointC(state: SlotState, slot: number, unit: CompiledUnit): number {
  const told = usable(state, slot);
  return Number.isNaN(told) ? (unit.design.supplySetPointC ?? Number.NaN) : told;
}

/**
 * The set point that the supply is judged by, °C. One that was raised holds at once. One that was lowered is followed as a loop can,
 * as its water is still warm from before. Where it can not be read now, nobody has set it back by that: the last one holds.
 * Keeps three cells of the rule that asks; the wait for it keeps the fourth.
 */
export function followedSetPointC(context: UnitContext): number {
  const { nowMs, slots, state, unit } = context;
  if (slots.supplySetPoint < 0) return unit.design.supplySetPointC ?? Number.NaN;
  const read = usable(state, slots.supplySetPoint);
  const told = Number.isNaN(read) ? recall(context, cell.told) : read;
  if (Number.isNaN(told)) return unit.design.supplySetPointC ?? Number.NaN;
  const elapsedS = Math.max(0, nowMs - recall(context, cell.atMs)) / 1000;
  const cooled = recall(context, cell.followed) - followKPerS * elapsedS;
  const followed = cooled > told ? cooled : told;
  keep(context, cell.told, told);
  keep(context, cell.followed, followed);
  keep(context, cell.atMs, nowMs);
  return followed;
}

/** What the unit was last told to hold, °C, as `followedSetPointC` keeps it; NaN where it has no such point, or none was heard yet. */
export const toldSetPointC = (context: UnitContext): number =>
  context.slots.supplySetPoint < 0 ? Number.NaN : recall(context, cell.told);

/**
 * The unit has a set point that nobody has heard yet: it may come once a minute, or with its next change. The site file may state
 * another one, so nothing is judged by that until it had its time to come. Asked after `followedSetPointC`.
 */
export function awaitsSetPoint(context: UnitContext): boolean {
  const { nowMs, site, slots } = context;
  if (slots.supplySetPoint < 0 || !Number.isNaN(recall(context, cell.told))) return false;
  const sinceMs = recall(context, cell.awaitedSinceMs);
  if (Number.isNaN(sinceMs)) {
    keep(context, cell.awaitedSinceMs, nowMs);
    return true;
  }
  const periodMs = site.slots.periodMs[slots.supplySetPoint] as number;
  return Math.abs(nowMs - sinceMs) < Math.max(awaitMs, awaitPeriods * periodMs);
}

import type { SlotState } from '../slots/slot-state';
import { flowText } from './details/quantity-text';
import { guard, usable, type UnitContext } from './judge-context';
import { saysNothing } from './says-nothing';
import type { UnitSlots } from './unit-slots';

/** Less than so much an hour is no walk that a person has to follow, m³/s. Own rule: 5 L/min. */
const leastM3PerS = 5 / 60_000;
/** The sum of levels counts as constant where it moves by less than this share of what one unit gains or loses. */
const constantShare = 0.3;

/** Water that this unit's tanks gain, m³/s; NaN where not known. */
export function waterGained({ allSlots, state }: UnitContext, unit: number): number {
  const slots = allSlots[unit];
  if (slots === undefined) return Number.NaN;
  const supply = slots.supplyTankRate < 0 ? 0 : usable(state, slots.supplyTankRate);
  return usable(state, slots.separatorRate) + supply;
}

/**
 * Water walks between the units of the loop: this one gains what another loses, and the sum stays. The other unit's index, −1
 * where it is not so or not known.
 */
export function walksWith(context: UnitContext): number {
  const units = context.site.loops[context.unit.loop]?.units ?? [];
  if (units.length < 2) return -1;
  const own = waterGained(context, context.unitIndex);
  if (!(Math.abs(own) > leastM3PerS)) return -1;
  let sum = 0;
  let other = -1;
  let strongest = leastM3PerS;
  for (const unit of units) {
    const gained = waterGained(context, unit);
    sum += gained;
    if (unit !== context.unitIndex && gained * own < 0 && Math.abs(gained) > strongest) {
      strongest = Math.abs(gained);
      other = unit;
    }
  }
  return Math.abs(sum) < constantShare * Math.abs(own) ? other : -1;
}

/**
 * Water walks into this unit from another one of the loop; null where a level that would tell is bad now. A unit without such levels
 * can't tell it at all.
 */
export function walksIn(context: UnitContext): boolean | null {
  const { allSlots, site, state, unit, unitIndex } = context;
  const units = site.loops[unit.loop]?.units ?? [];
  if (units.length < 2 || waterGained(context, unitIndex) <= leastM3PerS) return false;
  for (const one of units) {
    const { separatorRate = -1, supplyTankRate = -1 } = allSlots[one] ?? {};
    if (separatorRate < 0 || saysNothing(state, separatorRate) || saysNothing(state, supplyTankRate)) return false;
    if (Number.isNaN(waterGained(context, one))) return null;
  }
  return walksWith(context) >= 0;
}

/** The sum may swing by so much beyond its own uncertainty and still count as constant, m³/s. Own rule: 0.5 L/min. */
const standsM3PerS = 0.5 / 60_000;

/** The water of all tanks of the loop stays as it is: what is missing in one unit is in another. False where it is not known. */
export function sumStands(state: SlotState, slots: UnitSlots | undefined): boolean {
  const slot = slots?.loopWaterRate ?? -1;
  return Math.abs(usable(state, slot)) <= standsM3PerS + guard(state, slot);
}

export function walkText(context: UnitContext, other: number): string {
  const own = waterGained(context, context.unitIndex);
  const name = context.site.units[other]?.name ?? '';
  const [from, to] = own > 0 ? [name, context.unit.name] : [context.unit.name, name];
  return `Sum constant: water is moving from ${from} to ${to}, ${flowText(Math.abs(own))}. Nothing has leaked; compare their separator pressures.`;
}

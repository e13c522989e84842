import { pointPattern } from '@ebbline/shared/contract/point-table';
import { Origin, type CompiledSite } from '../site/compiled-site';
import { derivedPointsOfHall, derivedPointsOfUnit } from './derived-points';
import { slotsOfInput } from './inputs-of-point';
import { unitPlan } from './unit-plan';
import { unusedInputs } from './unused-inputs';

/** Slots of the points that a derived point of a unit, or of its hall, is worked out from, by the ways that this unit goes. */
export function inputsOfSlot(site: CompiledSite, unitIndex: number, slot: number): readonly number[] {
  const id = site.slots.pointId[slot] ?? '';
  const pattern = pointPattern(id);
  const named = [...derivedPointsOfHall, ...derivedPointsOfUnit].find((point) => point.id === pattern)?.inputs ?? [];
  const plan = unitPlan(site, unitIndex);
  const unused = unusedInputs[pattern]?.(plan, id) ?? [];
  const inputs = named.filter((input) => !unused.includes(input));
  return [...new Set(inputs.flatMap((input) => slotsOfInput(site, plan.unit, id, input)))];
}

/** What is measured, or typed by hand, behind it in the end, through all derived points on the way. */
export function measuredBehind(site: CompiledSite, unitIndex: number, slot: number): readonly number[] {
  const seen = new Set<number>();
  const follow = (one: number): void => {
    if (seen.has(one)) return;
    seen.add(one);
    if (site.slots.measured[one] === Origin.derived) inputsOfSlot(site, unitIndex, one).forEach(follow);
  };
  follow(slot);
  return [...seen].filter((one) => site.slots.measured[one] !== Origin.derived);
}

import { splitPoint } from '@ebbline/shared/contract/point-table';
import type { UnitPlan } from './unit-plan';

/** Slots of a row of the derived table: one, or one for every branch or plate; −1 where the site gives none. */
export function slotsOfPoint({ unit, holder }: UnitPlan, id: string): readonly number[] {
  const part = splitPoint(id);
  if (part === null) return [holder.slotOf.get(id) ?? -1];
  const parts = part.group === 'branch' ? unit.branches : unit.plates;
  return parts.map((one) => holder.slotOf.get(`${part.group}.${one.id}.${part.rest}`) ?? -1);
}

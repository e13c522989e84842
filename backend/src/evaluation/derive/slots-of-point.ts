import { splitPoint } from '@ebbline/shared/contract/point-table';
import type { UnitPlan } from './unit-plan';

/** Slots of a row of the derived table: one, or one for every part of its group; −1 where the site gives none. */
export function slotsOfPoint({ unit, holder }: UnitPlan, id: string): readonly number[] {
  const part = splitPoint(id);
  if (part === null) return [holder.slotOf.get(id) ?? -1];
  const { nodes, branches, servers, plates, tanks } = unit;
  const parts = { node: nodes, branch: branches, server: servers, plate: plates, tank: tanks }[part.group];
  return parts.map((one) => holder.slotOf.get(`${part.group}.${one.id}.${part.rest}`) ?? -1);
}

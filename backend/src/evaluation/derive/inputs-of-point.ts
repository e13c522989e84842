import { splitPoint } from '@ebbline/shared/contract/point-table';
import type { CompiledSite, CompiledUnit } from '../site/compiled-site';

/**
 * Slots of the points behind one line of a row's `inputs`: a point's pattern, or several joined by ` or `, of which the unit
 * has the first one whole (for every part), or else the first one at all. `<id>` is the part that the value itself
 * belongs to, the branch of its plate or server, or else every part.
 */
export function slotsOfInput(
  site: CompiledSite,
  unit: CompiledUnit,
  pointId: string,
  input: string,
): readonly number[] {
  const holders = [unit.holder, site.halls[unit.hall]?.holder ?? -1];
  const slotOf = (id: string): number =>
    holders.reduce((found, holder) => (found >= 0 ? found : (site.holders[holder]?.slotOf.get(id) ?? -1)), -1);
  const choices = input.split(' or ').map((pattern) => idsOf(unit, pointId, pattern).map(slotOf));
  const whole = choices.find((slots) => slots.length > 0 && slots.every((slot) => slot >= 0));
  return (whole ?? choices.find((slots) => slots.some((slot) => slot >= 0)) ?? []).filter((slot) => slot >= 0);
}

function idsOf(unit: CompiledUnit, pointId: string, pattern: string): readonly string[] {
  const wanted = splitPoint(pattern);
  if (wanted === null || wanted.id !== '<id>') return [pattern];
  const fill = (id: string): string => `${wanted.group}.${id}.${wanted.rest}`;
  const own = splitPoint(pointId);
  if (own?.group === wanted.group) return [fill(own.id)];
  const branch = own === null || wanted.group !== 'branch' ? undefined : branchOf(unit, own);
  if (branch !== undefined) return [fill(branch)];
  return partsOf(unit, wanted.group).map(fill);
}

/** The branch that feeds a plate or a server; undefined where the file names none. */
function branchOf(unit: CompiledUnit, { group, id }: { readonly group: string; readonly id: string }) {
  const parts = group === 'plate' ? unit.plates : group === 'server' ? unit.servers : [];
  return unit.branches[parts.find((one) => one.id === id)?.branch ?? -1]?.id;
}

function partsOf(unit: CompiledUnit, group: string): readonly string[] {
  const parts: Readonly<Record<string, readonly { readonly id: string }[]>> = {
    branch: unit.branches,
    server: unit.servers,
    plate: unit.plates,
    tank: unit.tanks,
    node: unit.nodes,
  };
  return (parts[group] ?? []).map(({ id }) => id);
}

import type { GroupEntryId } from '../alarm-rules/entry-ids';
import type { UnitSlots } from '../alarm-rules/unit-slots';
import type { CompiledSite } from '../site/compiled-site';

/**
 * What an entry of a loop or a hall reads, all of it in history. −1 where the site has no such point.
 * @param site the loop or the hall with its units, and the halls beside it
 */
export type GroupPoints = (site: CompiledSite, units: readonly UnitSlots[]) => readonly number[];

const of =
  (...names: readonly ('marginTimeToLimit' | 'waterVolume' | 'topUpRate' | 'conductivity25')[]): GroupPoints =>
  (_, units) =>
    units.flatMap((slots) => names.map((name) => slots[name]));

/** The first of each unit, or hall, is what it can't be judged without. */
export const groupPoints: Readonly<Record<GroupEntryId, GroupPoints>> = {
  'TANK-4': of('waterVolume', 'topUpRate', 'conductivity25'),
  'AMB-1': ({ halls }) => halls.map(({ slot }) => slot.ambientPressure),
  'MARGIN-3': of('marginTimeToLimit'),
};

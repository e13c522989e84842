import { partGroups, type PartGroup } from '@ebbline/shared/contract/point-table';
import type { UnitInFile } from '@ebbline/shared/contract/site-file-unit';

/** Ids of the parts that a holder has, by group, in the order of the file. */
export type PartIds = Readonly<Record<PartGroup, readonly string[]>>;

export const noParts: PartIds = { node: [], branch: [], server: [], plate: [], tank: [] };

/** The maps of a unit that list its parts; merging has taken every `~` out of them. */
export function partMaps({ nodes, branches, servers, plates, tanks }: UnitInFile) {
  return {
    node: nodes ?? {},
    branch: branches ?? {},
    server: servers ?? {},
    plate: plates ?? {},
    tank: tanks?.named ?? {},
  };
}

export function partIds(unit: UnitInFile): PartIds {
  const maps = partMaps(unit);
  const ids = (group: PartGroup): readonly string[] => Object.keys(maps[group]);
  return { node: ids('node'), branch: ids('branch'), server: ids('server'), plate: ids('plate'), tank: ids('tank') };
}

export interface PlaceRow {
  readonly names: readonly string[];
  /** Where each group's parts begin in `names`; the pump's inlet is the last. */
  readonly first: Readonly<Record<PartGroup, number>>;
}

export const pumpInletPlaceName = 'pump inlet';

/** How a gas load was found, in the order of `GasMethod`: told where the value comes from, as the place of another is. */
export const gasMethodNames = [
  'by pressure rise while the source rests',
  'by its exhaust meter',
  'by the curve of the source',
] as const;

/** Names in the order of a unit holder's `places`: nodes, branches, servers, plates, tanks, ways to find a gas load, then the pump's inlet. */
export function placesOf(unit: UnitInFile): PlaceRow {
  type Named = Readonly<Record<string, { readonly name?: string | undefined } | null>>;
  const named = (map: Named): readonly string[] => Object.entries(map).map(([id, one]) => one?.name ?? id);
  const maps = partMaps(unit);
  const names: string[] = [];
  const first = { node: 0, branch: 0, server: 0, plate: 0, tank: 0 };
  for (const group of partGroups) {
    first[group] = names.length;
    names.push(...named(maps[group]));
  }
  return { names: [...names, ...gasMethodNames, pumpInletPlaceName], first };
}

import { pointDefinition, pointPattern } from '@ebbline/shared/contract/point-table';
import type { NotWatched } from '@ebbline/shared/contract/setup';
import { unitEntries } from '../../evaluation/alarm-rules/catalogue/catalogue';
import type { UnitEntry } from '../../evaluation/alarm-rules/entry';
import { compileUnitSlots, type UnitSlots } from '../../evaluation/alarm-rules/unit-slots';
import { partsOf } from '../../evaluation/pipeline/part-index';
import type { CompiledSite, CompiledUnit } from '../../evaluation/site/compiled-site';

/** Entries of the catalogue that are not judged for a unit, as it lacks what they need, and which of their points it does not measure. */
export function notWatched(site: CompiledSite, unitIndex: number): NotWatched[] {
  const unit = site.units[unitIndex];
  const holder = site.holders[unit?.holder ?? -1];
  if (unit === undefined || holder === undefined) throw new RangeError(`no unit has the index ${unitIndex}`);
  const slots = compileUnitSlots(holder, unit);
  const measured = new Set(
    [holder, site.holders[site.halls[unit.hall]?.holder ?? -1]].flatMap((one) =>
      [...(one?.slotOf ?? [])].filter(([, slot]) => site.slots.measured[slot] === 1).map(([id]) => pointPattern(id)),
    ),
  );
  return unitEntries
    .filter((entry) => !isWatched(entry, unit, slots))
    .map(({ feeds, id, title }) => ({
      entry: id,
      title,
      lacks: feeds
        .filter((feed) => !measured.has(pointPattern(feed)))
        .map((feed) => pointDefinition(feed)?.title ?? feed),
    }));
}

function isWatched(entry: UnitEntry, unit: CompiledUnit, slots: UnitSlots): boolean {
  const applies = (part: number): boolean => entry.applies?.(unit, slots, part) ?? true;
  return entry.per === undefined ? applies(-1) : partsOf(unit, entry.per).some((_, part) => applies(part));
}

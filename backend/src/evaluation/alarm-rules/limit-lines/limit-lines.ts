import { pointDefinition, pointPattern } from '@ebbline/shared/contract/point-table';
import type { LimitLine } from '@ebbline/shared/contract/setup';
import type { CompiledSite } from '../../site/compiled-site';
import type { SlotState } from '../../slots/slot-state';
import { unitEntries } from '../catalogue/catalogue';
import { supplySetPointC } from '../plant-signs/supply-set-point';
import { resolveLimits } from '../resolve-limits';
import { lineTable } from './line-table';

/**
 * The limits that can be drawn beside the points of a unit, with what the site file says for it: one line for each entry,
 * point and side, of those that the unit has and whose entry is on. In the order of the catalogue. Where the unit tells its set point,
 * the line stands at that one, also in the minutes in which the alarm still goes by a higher one of before.
 */
export function limitLines(site: CompiledSite, state: SlotState, unitIndex: number): readonly LimitLine[] {
  const unit = site.units[unitIndex];
  const holder = unit === undefined ? undefined : site.holders[unit.holder];
  if (unit === undefined || holder === undefined) return [];
  const points = [...holder.slotOf.keys()];
  const setPointC = supplySetPointC(state, holder.slotOf.get('supply.setPoint') ?? -1, unit);
  return unitEntries.flatMap((entry) => {
    const limits = resolveLimits(entry.defaults, unit.limits.get(entry.id));
    if (!limits.enabled) return [];
    return (lineTable[entry.id] ?? []).flatMap((row) => {
      const limit = row.at(limits, unit, setPointC);
      if (Number.isNaN(limit)) return [];
      return points
        .filter((point) => pointPattern(point) === row.point)
        .map((point) => ({
          entry: entry.id,
          title: entry.title,
          point,
          side: row.side,
          limit,
          unit_of_measure: pointDefinition(point)?.unit ?? '1',
        }));
    });
  });
}

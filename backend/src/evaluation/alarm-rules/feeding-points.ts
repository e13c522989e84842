import { pointPattern } from '@ebbline/shared/contract/point-table';
import type { Priority } from '@ebbline/shared/contract/alarm';
import type { CompiledSite } from '../site/compiled-site';
import { unitEntries } from './catalogue/catalogue';
import { ins1, severityOfLoss } from './catalogue/ins-1';
import type { UnitEntryId } from './entry-ids';
import { priorityOf } from './priority';
import { highestPriorityOf } from './priority-of-entry';

/** A measured point whose loss is an alarm by what it feeds: INS-1 is judged for it. One whose loss is only an alert is left out. */
export interface FeedingPoint {
  readonly slot: number;
  readonly holder: number;
  readonly priority: Priority;
  readonly feeds: readonly UnitEntryId[];
}

/** All of them, in slot order. */
export function feedingPoints(site: CompiledSite): readonly FeedingPoint[] {
  const points: FeedingPoint[] = [];
  for (let slot = 0; slot < site.slots.count; slot += 1) {
    if (site.slots.measured[slot] !== 1) continue;
    const pattern = pointPattern(site.slots.pointId[slot] as string);
    const fed = unitEntries.filter((entry) => entry.feeds.includes(pattern));
    const priority = priorityOf(severityOfLoss(fed.map(highestPriorityOf)), ins1.timeToRespondS);
    if (fed.length === 0 || priority === null) continue;
    points.push({
      slot,
      holder: site.slots.holder[slot] as number,
      priority,
      feeds: fed.map((entry) => entry.id),
    });
  }
  return points;
}

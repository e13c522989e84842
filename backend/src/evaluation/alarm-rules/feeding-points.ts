import { pointPattern } from '@ebbline/shared/contract/point-table';
import type { CompiledSite } from '../site/compiled-site';
import { unitEntries } from './catalogue/catalogue';
import { severityOfLoss } from './catalogue/ins-1';
import type { UnitEntryId } from './entry-ids';
import type { Severity } from './priority';

/** A measured point that feeds at least one entry: INS-1 is judged for it. */
export interface FeedingPoint {
  readonly slot: number;
  readonly holder: number;
  readonly severity: Severity;
  readonly feeds: readonly UnitEntryId[];
}

/** All of them, in slot order. */
export function feedingPoints(site: CompiledSite): readonly FeedingPoint[] {
  const points: FeedingPoint[] = [];
  for (let slot = 0; slot < site.slots.count; slot += 1) {
    if (site.slots.measured[slot] !== 1) continue;
    const pattern = pointPattern(site.slots.pointId[slot] as string);
    const fed = unitEntries.filter((entry) => entry.feeds.includes(pattern));
    if (fed.length === 0) continue;
    points.push({
      slot,
      holder: site.slots.holder[slot] as number,
      severity: severityOfLoss(fed.map((entry) => entry.severity)),
      feeds: fed.map((entry) => entry.id),
    });
  }
  return points;
}

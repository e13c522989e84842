import { pointPattern } from '@ebbline/shared/contract/point-table';
import type { Priority } from '@ebbline/shared/contract/alarm';
import type { CompiledSite } from '../site/compiled-site';
import { groupEntries, unitEntries } from './catalogue/catalogue';
import { ins1, severityOfLoss } from './catalogue/ins-1';
import type { EntryId } from './entry-ids';
import { priorityOf } from './priority';
import { highestPriorityOf } from './priority-of-entry';

/** A measured point that an alarm needs: INS-1 is judged for it. */
export interface FeedingPoint {
  readonly slot: number;
  readonly holder: number;
  /** Null where the grid makes its loss an alert: it feeds less important entries only. */
  readonly priority: Priority | null;
  readonly feeds: readonly EntryId[];
}

interface Fed {
  readonly id: EntryId;
  readonly feeds: readonly string[];
  readonly highest: Priority | null;
}

/** All of them, in slot order. */
export function feedingPoints(site: CompiledSite): readonly FeedingPoint[] {
  const known = new Map<string, Omit<FeedingPoint, 'slot' | 'holder'>>();
  const points: FeedingPoint[] = [];
  const entries = fedEntries();
  for (let slot = 0; slot < site.slots.count; slot += 1) {
    if (site.slots.measured[slot] !== 1) continue;
    const pattern = pointPattern(site.slots.pointId[slot] as string);
    const one = known.get(pattern) ?? rateLoss(entries, pattern);
    known.set(pattern, one);
    if (one.feeds.length > 0) points.push({ ...one, slot, holder: site.slots.holder[slot] as number });
  }
  return points;
}

const fedEntries = (): readonly Fed[] => [
  ...unitEntries.map((entry) => ({ id: entry.id, feeds: entry.feeds, highest: highestPriorityOf(entry) })),
  ...groupEntries.map((entry) => ({
    id: entry.id,
    feeds: entry.feeds,
    highest: priorityOf(entry.severity, entry.timeToRespondS),
  })),
];

function rateLoss(entries: readonly Fed[], pattern: string): Omit<FeedingPoint, 'slot' | 'holder'> {
  const fed = entries.filter(({ feeds }) => feeds.includes(pattern));
  return {
    priority: priorityOf(severityOfLoss(fed.map(({ highest }) => highest)), ins1.timeToRespondS),
    feeds: fed.map(({ id }) => id),
  };
}

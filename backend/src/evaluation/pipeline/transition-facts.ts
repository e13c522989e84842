import { pointPattern, splitPoint } from '@ebbline/shared/contract/point-table';
import type { Quality } from '@ebbline/shared/contract/reading';
import { catalogue, groupEntries, unitEntries } from '../alarm-rules/catalogue/catalogue';
import type { AlarmClass } from '../alarm-rules/rationale/alarm-classes';
import { rationaleTable } from '../alarm-rules/rationale/rationale-table';
import type { EntryId } from '../alarm-rules/entry-ids';
import type { CompiledSite } from '../site/compiled-site';
import { qualityOf } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import type { AlarmTransition } from './outputs';

/** What the journal holds of a change of an alarm beside the change itself (ANSI/ISA-18.2-2016, records of alarms). */
export interface TransitionFacts {
  /** Worst quality of the measured points that feed the alarm, as they are now; absent where it is fed by none. */
  readonly quality?: Quality;
  readonly class?: AlarmClass;
  /** Operating position: the hall, or the site where the alarm is of none. */
  readonly position: string;
}

const feedsOf: ReadonlyMap<string, readonly string[]> = new Map(
  [...unitEntries, ...groupEntries].map(({ id, feeds }) => [id, feeds]),
);

export function transitionFacts(
  site: CompiledSite,
  state: SlotState,
  { alarm, entry, unit, hall }: Pick<AlarmTransition, 'alarm' | 'entry' | 'unit' | 'hall'>,
): TransitionFacts {
  const quality = worstOf(feedingQualities(site, state, alarm, entry, [unit, hall]));
  return {
    ...(quality === null ? {} : { quality }),
    ...(isEntry(entry) ? { class: rationaleTable[entry].class } : {}),
    position: hall ?? site.id,
  };
}

const isEntry = (entry: string): entry is EntryId => Object.hasOwn(catalogue, entry);

function feedingQualities(
  { holders, slots }: CompiledSite,
  state: SlotState,
  alarm: string,
  entry: string,
  of: readonly (string | null)[],
): Quality[] {
  const [, , part] = alarm.split(':');
  const feeds = feedsOf.get(entry);
  const isFed = (point: string): boolean =>
    feeds === undefined
      ? point === part
      : feeds.includes(pointPattern(point)) && (part === undefined || (splitPoint(point)?.id ?? part) === part);
  const found: Quality[] = [];
  for (const { id, firstSlot, slotCount } of holders) {
    if (!of.includes(id)) continue;
    for (let slot = firstSlot; slot < firstSlot + slotCount; slot += 1)
      if (slots.measured[slot] === 1 && isFed(slots.pointId[slot] ?? ''))
        found.push(qualityOf(state.reasons[slot] as number));
  }
  return found;
}

const worstOf = (qualities: readonly Quality[]): Quality | null =>
  (['bad', 'uncertain', 'good'] as const).find((quality) => qualities.includes(quality)) ?? null;

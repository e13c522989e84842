import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { AlarmGroup } from '../../components/order-alarms';

export interface ListedAlarm {
  readonly alarm: Alarm;
  /** True where it stands no longer, and its row is kept so that no other moves. */
  readonly gone: boolean;
  /** True where it stands and no longer fits what the list is narrowed to; its row is kept for the same reason. */
  readonly unfit: boolean;
  /** True where its row is kept though it belongs under another first-out by now, or under none. */
  readonly astray: boolean;
}

/** A first-out with what follows from it, as the list shows them. */
export interface ListedGroup extends ListedAlarm {
  readonly folded: readonly ListedAlarm[];
  /** True where it came while the order was held. */
  readonly late: boolean;
}

/** What is known now, besides which rows fit and in what order. */
export interface Known {
  /** All that stands, whether it fits what is chosen or not: only what is absent here stands no longer. */
  readonly standing: ReadonlyMap<string, Alarm>;
  /** Whether what follows from an alarm is on the screen under it. */
  readonly isUnfolded: (id: string) => boolean;
}

const asItIs = (alarm: Alarm): ListedAlarm => ({ alarm, gone: false, unfit: false, astray: false });

export const list = (groups: readonly AlarmGroup[]): readonly ListedGroup[] =>
  groups.map(({ alarm, folded }) => ({ ...asItIs(alarm), late: false, folded: folded.map(asItIs) }));

/**
 * The list with what is known now and every row where it was, each alarm once: what is new stands last, what has gone keeps its place.
 * What lay folded was not on the screen: where it follows from something else by now, or stands for itself, it goes there.
 */
export function keepOrder(
  before: readonly ListedGroup[],
  next: readonly AlarmGroup[],
  { standing, isUnfolded }: Known,
): readonly ListedGroup[] {
  const firstOutOf = new Map(next.flatMap(({ alarm, folded }) => [alarm, ...folded].map((one) => [one.id, alarm.id])));
  const stay = ({ alarm }: ListedAlarm, under: string): ListedAlarm => {
    const firstOut = firstOutOf.get(alarm.id);
    const now = standing.get(alarm.id);
    return {
      alarm: now ?? alarm,
      gone: now === undefined,
      unfit: now !== undefined && firstOut === undefined,
      astray: firstOut !== undefined && firstOut !== under,
    };
  };
  const kept = before.map((group): ListedGroup => {
    const { id } = group.alarm;
    const folded = group.folded.map((one) => stay(one, id)).filter(({ astray }) => !astray || isUnfolded(id));
    return { ...stay(group, id), late: group.late, folded };
  });
  const rowOf = new Map(kept.flatMap((group) => [group, ...group.folded].map((one) => [one.alarm.id, group.alarm.id])));
  const fresh = next.map(({ alarm, folded }) => ({ alarm, folded: folded.filter(({ id }) => !rowOf.has(id)) }));
  const joining = new Map<string, readonly Alarm[]>();
  for (const { alarm, folded } of fresh) {
    const row = rowOf.get(alarm.id);
    if (row !== undefined) joining.set(row, [...(joining.get(row) ?? []), ...folded]);
  }
  return [
    ...kept.map((group) => ({
      ...group,
      folded: [...group.folded, ...(joining.get(group.alarm.id) ?? []).map(asItIs)],
    })),
    ...list(fresh.filter(({ alarm }) => !rowOf.has(alarm.id))).map((group) => ({ ...group, late: true })),
  ];
}

import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { AlarmGroup } from '../../components/order-alarms';

export interface ListedAlarm {
  readonly alarm: Alarm;
  /** True where it stands no longer, and its row is kept so that no other moves. */
  readonly gone: boolean;
}

/** A first-out with what follows from it, as the list shows them. */
export interface ListedGroup extends ListedAlarm {
  readonly folded: readonly ListedAlarm[];
  /** True where it came while the order was held. */
  readonly late: boolean;
}

export const list = (groups: readonly AlarmGroup[]): readonly ListedGroup[] =>
  groups.map(({ alarm, folded }) => ({
    alarm,
    gone: false,
    late: false,
    folded: folded.map((one) => ({ alarm: one, gone: false })),
  }));

/** The list with what is known now and every row where it was: what is new stands last, what has gone keeps its place. */
export function keepOrder(before: readonly ListedGroup[], next: readonly AlarmGroup[]): readonly ListedGroup[] {
  const now = new Map(next.map((group) => [group.alarm.id, group]));
  const kept = before.map((group): ListedGroup => {
    const found = now.get(group.alarm.id);
    now.delete(group.alarm.id);
    if (found === undefined)
      return { ...group, gone: true, folded: group.folded.map((one) => ({ ...one, gone: true })) };
    return { alarm: found.alarm, gone: false, late: group.late, folded: keepFolded(group.folded, found.folded) };
  });
  return [...kept, ...list([...now.values()]).map((group) => ({ ...group, late: true }))];
}

function keepFolded(before: readonly ListedAlarm[], next: readonly Alarm[]): readonly ListedAlarm[] {
  const now = new Map(next.map((alarm) => [alarm.id, alarm]));
  const kept = before.map(({ alarm }): ListedAlarm => {
    const found = now.get(alarm.id);
    now.delete(alarm.id);
    return { alarm: found ?? alarm, gone: found === undefined };
  });
  return [...kept, ...[...now.values()].map((alarm) => ({ alarm, gone: false }))];
}

import type { Alarm, Priority } from '@ebbline/shared/contract/alarm';
import { isGone, needsAcknowledgement } from '../../components/alarm-facts';
import type { AlarmGroup } from '../../components/order-alarms';
import type { AlarmsView, Answer } from './alarms-address';

/** What a list is narrowed by, of an alarm that stands or is set aside. */
type Narrowed = Pick<Alarm, 'unit' | 'hall' | 'priority' | 'state'>;

const answered: { readonly [A in Answer]: (state: Alarm['state']) => boolean } = {
  waiting: needsAcknowledgement,
  seen: (state) => !needsAcknowledgement(state),
  gone: isGone,
};

/** @param said everything that is said of it on the screen: words are looked for there */
export function fits(alarm: Narrowed, view: AlarmsView, said: string): boolean {
  const words = view.text.toLowerCase().split(/\s+/);
  const text = said.toLowerCase();
  return (
    (view.unit === null || alarm.unit === view.unit) &&
    (view.hall === null || alarm.hall === view.hall) &&
    (view.priorities.length === 0 || view.priorities.includes(alarm.priority)) &&
    (view.answer === null || answered[view.answer](alarm.state)) &&
    words.every((word) => text.includes(word))
  );
}

export interface NarrowedList {
  readonly shown: readonly AlarmGroup[];
  /** Alarms that stand and are not shown. */
  readonly hidden: number;
  /** Of those that are not shown. */
  readonly worstHidden: Priority | null;
}

/** A first-out and what follows from it are shown together, where any of them fits: the one explains the other. */
export function narrowGroups(
  groups: readonly AlarmGroup[],
  view: AlarmsView,
  sayOf: (alarm: Alarm) => string,
): NarrowedList {
  const isShown = ({ alarm, folded }: AlarmGroup): boolean =>
    [alarm, ...folded].some((one) => fits(one, view, sayOf(one)));
  const shown = groups.filter(isShown);
  const hidden = groups.filter((group) => !isShown(group)).flatMap(({ alarm, folded }) => [alarm, ...folded]);
  const worst = Math.min(...hidden.map(({ priority }) => priority));
  return {
    shown,
    hidden: hidden.length,
    worstHidden: hidden.find(({ priority }) => priority === worst)?.priority ?? null,
  };
}

/** So many first-outs of a flood stand on top: what came later is sooner a consequence than a cause. */
export const firstOfFlood = 3;

/** While a flood is on, what it began with comes first, as it came; all else keeps its order. */
export function firstOutsFirst(groups: readonly AlarmGroup[], firstOuts: readonly string[]): readonly AlarmGroup[] {
  const first = firstOuts.slice(0, firstOfFlood).flatMap((id) => groups.filter(({ alarm }) => alarm.id === id));
  return [...first, ...groups.filter((group) => !first.includes(group))];
}

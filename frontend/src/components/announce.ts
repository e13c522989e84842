import type { Alarm } from '@ebbline/shared/contract/alarm';
import { priorityWords } from '../text/words';

/** One telling of one alarm. */
const keyOf = ({ id, stateSince }: Alarm): string => `${id} ${stateSince}`;

/**
 * Tellings that a listener has not heard of yet. What follows from another alarm is left out, as its first-out is told; it is
 * told once it stands for itself.
 * @param known grows by what is told now
 */
export function freshlyTold(alarms: readonly Alarm[], known: Set<string>): readonly Alarm[] {
  const told = alarms.filter(({ state, foldedUnder }) => state === 'unacknowledged' && foldedUnder === null);
  const fresh = told.filter((alarm) => !known.has(keyOf(alarm)));
  for (const alarm of fresh) known.add(keyOf(alarm));
  return fresh;
}

/** In one sentence, however many there are; empty where there are none. */
export function sayTold(alarms: readonly Alarm[], nameOf: (alarm: Alarm) => string): string {
  const worst = [...alarms].sort((one, other) => one.priority - other.priority)[0];
  if (worst === undefined) return '';
  const said = `${priorityWords[worst.priority]}: ${nameOf(worst)}`;
  return alarms.length === 1 ? `New alarm, ${said}` : `${alarms.length} new alarms, the worst, ${said}`;
}

import type { Priority } from '@ebbline/shared/contract/alarm';
import type { CallingAlarm } from '@ebbline/shared/contract/live-feed';

/** One call: an alarm that is acknowledged, goes and comes again calls anew. */
export const callOf = ({ id, since }: Pick<CallingAlarm, 'id' | 'since'>): string => `${since} ${id}`;

/** Which priority is to be heard: the most urgent of those that nobody has silenced; null: none. */
export function heardPriority(calling: readonly CallingAlarm[], silenced: ReadonlySet<string>): Priority | null {
  const heard = calling.filter((one) => !silenced.has(callOf(one))).map(({ priority }) => priority);
  return heard.length === 0 ? null : (Math.min(...heard) as Priority);
}

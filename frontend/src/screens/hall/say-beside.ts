import type { BesideAlarm } from '@ebbline/shared/contract/live-feed';
import { isGone } from '../../components/alarm-facts';
import { alarmStateWords, priorityWords } from '../../text/words';

/** How urgent an alarm of no single unit is, or that it is over; and who has seen it. */
export function sayBeside({
  state,
  priority,
  acknowledgedBy,
}: Pick<BesideAlarm, 'state' | 'priority' | 'acknowledgedBy'>): string {
  if (isGone(state)) return alarmStateWords[state];
  if (state !== 'acknowledged') return priorityWords[priority];
  return `${priorityWords[priority]}, acknowledged${acknowledgedBy === null ? '' : ` by ${acknowledgedBy}`}`;
}

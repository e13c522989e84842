import type { Alarm, AlarmState } from '@ebbline/shared/contract/alarm';
import { formatByUnit, inWords } from '../text/format-quantity';

const waiting: readonly AlarmState[] = ['unacknowledged', 'returnedUnacknowledged', 'latchedUnacknowledged'];

/** True where somebody still has to say that they have seen it. */
export const needsAcknowledgement = (state: AlarmState): boolean => waiting.includes(state);

/** Value when raised against its limit, each with its unit; null where there is nothing to compare (a yes or no). */
export function sayValueAgainstLimit(
  alarm: Pick<Alarm, 'entry' | 'value' | 'limit' | 'unit_of_measure'>,
): string | null {
  const freeAir = alarm.entry.startsWith('AIR-');
  const say = (value: number): string => inWords(formatByUnit(value, alarm.unit_of_measure, freeAir));
  if (alarm.limit === null && alarm.unit_of_measure === '1') return null;
  if (alarm.value === null) return alarm.limit === null ? null : `limit ${say(alarm.limit)}`;
  return alarm.limit === null ? say(alarm.value) : `${say(alarm.value)} against a limit of ${say(alarm.limit)}`;
}

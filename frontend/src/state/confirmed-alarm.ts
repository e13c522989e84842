import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { Acknowledging } from './use-acknowledge';

/** An alarm as it stands: the server's answer to an acknowledgement is newer than a frame that was built before it. */
export function confirmedAlarm(alarm: Alarm, acknowledging: Acknowledging | undefined): Alarm {
  if (acknowledging?.step !== 'confirmed') return alarm;
  return Date.parse(acknowledging.alarm.stateSince) >= Date.parse(alarm.stateSince) ? acknowledging.alarm : alarm;
}

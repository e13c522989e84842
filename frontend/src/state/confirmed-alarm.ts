import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { Acknowledging } from './use-acknowledge';

/**
 * An alarm as it stands: the server's answer to an acknowledgement is newer than a frame that was built before it. Once a frame
 * has shown the answer, every other state is one that came after, also by a clock that was set back.
 */
export function confirmedAlarm(alarm: Alarm, acknowledging: Acknowledging | undefined): Alarm {
  if (acknowledging?.step !== 'confirmed') return alarm;
  const [answered, told] = [Date.parse(acknowledging.alarm.stateSince), Date.parse(alarm.stateSince)];
  if (acknowledging.shown === true) return answered === told ? acknowledging.alarm : alarm;
  return answered >= told ? acknowledging.alarm : alarm;
}

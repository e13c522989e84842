import type { AlarmState } from '@ebbline/shared/contract/alarm';
import { settingAside, whileSetAside, type ConditionEvent } from './set-aside-table';
import { transition } from './transition';

/** The state that the condition brings an alarm to, told or set aside; null where nothing happens. */
export function nextState(
  state: AlarmState,
  event: ConditionEvent,
  latching: boolean,
  setAside: boolean,
): AlarmState | null {
  if (!setAside) {
    const step = transition(state, event, latching);
    return step.ok && step.changed ? step.state : null;
  }
  const from = settingAside[state];
  const to = whileSetAside[from][event][latching ? 'latching' : 'plain'];
  return to === from && !(event === 'worsened' && from === 'acknowledged') ? null : to;
}

import type { AlarmMode } from '@ebbline/shared/contract/alarm-modes';
import type { Actor } from './alarm-identity';
import type { AlarmRecord } from './alarm-record';
import { describeChange, type Change } from './describe-change';
import { inService, modeOf, setAsideOf, type SetAside } from './mode-facts';
import type { ModeEvent } from './mode-table';
import { bringingBack, settingAside } from './set-aside-table';
import { stateFacts } from './states';

/** What is known of the mode that an alarm goes into. */
export type ModeDetails = Omit<SetAside, 'mode' | 'modeSinceMs'>;

/**
 * The alarm in its next mode, and the change as the journal has it. Back in service it has the state that its condition
 * then has. An alarm that is suppressed by design and normal is in service: that its entry is off, the mode of its unit says.
 * @param details null where it comes back
 */
export function changeMode(
  before: AlarmRecord,
  mode: AlarmMode,
  event: ModeEvent,
  details: ModeDetails | null,
  nowMs: number,
  actor: Actor | null,
): Change {
  const state = settingAside[before.state];
  const next = mode === 'suppressedByDesign' && state === 'normal' ? 'inService' : mode;
  const plain = inService(before);
  const to = next === 'inService' ? bringingBack[state] : state;
  const record: AlarmRecord = {
    ...plain,
    state: to,
    active: stateFacts[to].active,
    stateSinceMs: to === before.state ? before.stateSinceMs : nowMs,
    acknowledgedBy: null,
    acknowledgedAtMs: null,
    ...(next === 'inService' || details === null ? {} : { ...details, mode: next, modeSinceMs: nowMs }),
  };
  const left = next === 'inService' ? setAsideOf(before) : null;
  const transition = {
    ...describeChange(before.state, record, event, nowMs, actor),
    ...left,
    mode: next,
    modeFrom: modeOf(before),
  };
  return { transition, record };
}

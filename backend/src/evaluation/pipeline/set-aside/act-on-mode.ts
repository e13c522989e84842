import { unreachable } from '@ebbline/shared/errors/unreachable';
import type { BookOutcome, Commit } from '../../alarm-lifecycle/alarm-book';
import type { AlarmRecord } from '../../alarm-lifecycle/alarm-record';
import type { ModeDetails } from '../../alarm-lifecycle/change-mode';
import { longestShelvingMs } from '../../alarm-lifecycle/longest-shelving';
import { modeOf } from '../../alarm-lifecycle/mode-facts';
import { modeStep } from '../../alarm-lifecycle/mode-step';
import type { ModeAction } from '../inputs';
import type { RefusalOfOperatorAction } from '../outputs';
import type { PipelineState } from '../pipeline-state';
import { suppressedNow } from './by-design';
import { configuredAlarm } from './configured-alarm';
import { normalRecord } from './normal-record';
import { priorityOfAlarm, type PriorityOfAlarm } from './priority-of-alarm';
import { refoldAround } from './refold-around';

export type ModeOutcome =
  | Extract<BookOutcome, { ok: true }>
  | { readonly ok: false; readonly refusal: RefusalOfOperatorAction; readonly record: AlarmRecord | null };

/**
 * Shelves an alarm, takes it out of service, or brings it back; standing or not. What `commit` does not take has not
 * happened. An alert is no alarm: it cannot be set aside.
 */
export function actOnMode(pipeline: PipelineState, action: ModeAction, nowMs: number, commit?: Commit): ModeOutcome {
  const { book, index } = pipeline;
  const alarm = configuredAlarm(pipeline, action.alarm);
  if (alarm < 0) return { ok: false, refusal: 'ALARM_UNKNOWN', record: null };
  const priority = priorityOfAlarm(pipeline, alarm);
  if (priority === null) return { ok: false, refusal: 'ALERT_NOT_SET_ASIDE', record: null };
  const record = book.record(alarm);
  const step = modeStep(record === null ? 'inService' : modeOf(record), action.kind, false);
  const refusal = step.ok ? refusalOf(action, priority, nowMs) : step.refusal;
  if (refusal !== null) return { ok: false, refusal, record };
  const suppression = suppressedNow(pipeline, alarm);
  const asked = {
    event: action.kind,
    details: detailsOf(action, nowMs) ?? suppression,
    suppressed: suppression !== null,
  };
  const normal = (): AlarmRecord => normalRecord(pipeline, alarm, priority, nowMs);
  const outcome = book.changeMode(alarm, index.identity(alarm), normal, asked, nowMs, action, commit);
  if (outcome?.ok === true) refoldAround(pipeline, alarm);
  return outcome ?? { ok: false, refusal: 'ALARM_UNKNOWN', record };
}

function refusalOf(action: ModeAction, { highest }: PriorityOfAlarm, nowMs: number): RefusalOfOperatorAction | null {
  if (action.kind === 'shelve') {
    return action.forMs > 0 && action.forMs <= longestShelvingMs(highest) ? null : 'SHELVING_TOO_LONG';
  }
  const past = action.kind === 'takeOut' && action.plannedEndMs !== null && action.plannedEndMs <= nowMs;
  return past ? 'PLANNED_END_PAST' : null;
}

/** Null where it is brought back. */
function detailsOf(action: ModeAction, nowMs: number): ModeDetails | null {
  const said = { modeBy: action.operator, modeReason: action.comment };
  switch (action.kind) {
    case 'shelve':
      return { ...said, modeUntilMs: nowMs + action.forMs, interimMeasures: null };
    case 'takeOut':
      return { ...said, modeUntilMs: action.plannedEndMs, interimMeasures: action.interimMeasures };
    case 'unshelve':
    case 'returnToService':
      return null;
    default:
      return unreachable(action);
  }
}

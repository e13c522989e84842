import type { AlarmRecord } from '../alarm-lifecycle/alarm-record';
import type { Commit } from '../alarm-lifecycle/alarm-book';
import type { OperatorAction } from './inputs';
import type { ActionOutcome } from './outputs';
import type { PipelineState } from './pipeline-state';
import { refusalText } from './refusal-text';
import { actOnMode, type ModeOutcome } from './set-aside/act-on-mode';
import { refoldAround } from './set-aside/refold-around';

/** Carries out one operator action, if `commit` takes it; else nothing has changed. */
export function act(pipeline: PipelineState, action: OperatorAction, nowMs: number, commit?: Commit): ActionOutcome {
  const outcome = outcomeOf(pipeline, action, nowMs, commit);
  if (outcome.ok) return outcome;
  return {
    ok: false,
    code: outcome.refusal,
    message: refusalText(outcome.refusal, action.alarm, outcome.record, nowMs),
    ...whoWasFirst(outcome.record),
  };
}

function outcomeOf(
  pipeline: PipelineState,
  action: OperatorAction,
  nowMs: number,
  commit: Commit | undefined,
): ModeOutcome {
  switch (action.kind) {
    case 'acknowledge':
      return leaving(pipeline, action.alarm, () => pipeline.book.acknowledge(action.alarm, action, nowMs, commit));
    case 'resetLatch':
      return leaving(pipeline, action.alarm, () => pipeline.book.reset(action.alarm, action, nowMs, commit));
    default:
      return actOnMode(pipeline, action, nowMs, commit);
  }
}

/** What the action ends folds nothing any more: what stood under it stands for itself at once. */
function leaving(pipeline: PipelineState, alarm: string, carryOut: () => ModeOutcome): ModeOutcome {
  const place = pipeline.book.indexOfName(alarm);
  const outcome = carryOut();
  if (outcome.ok && outcome.record.state === 'normal' && place !== undefined) refoldAround(pipeline, place);
  return outcome;
}

const whoWasFirst = (record: AlarmRecord | null) => ({
  acknowledgedBy: record?.acknowledgedBy ?? null,
  acknowledgedAtMs: record?.acknowledgedAtMs ?? null,
});

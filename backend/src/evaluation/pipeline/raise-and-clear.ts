import type { Priority } from '@ebbline/shared/contract/alarm';
import type { AlarmFacts } from '../alarm-lifecycle/alarm-book';
import { advanceDelay, DelayChange } from '../alarm-rules/delays';
import type { Finding } from '../alarm-rules/finding';
import { Verdict } from '../alarm-rules/verdict';
import { beginAlert, endAlert } from './alerts';
import type { PipelineState } from './pipeline-state';

/** What a rule needs to turn its finding into a change of an alarm. */
export interface Judged {
  readonly alarm: number;
  readonly onDelayMs: number;
  readonly offDelayMs: number;
  /** How long after it was acknowledged it is told anew, ms; undefined: not at all. */
  readonly reAlarmAfterMs?: number | undefined;
  readonly unitOfMeasure: string | null;
  /** Null: told as an alert, not raised as an alarm. */
  readonly priority: Priority | null;
  /** The entry was switched off by the site file: a standing alarm ends by configuration. */
  readonly enabled: boolean;
  /** Says what is known of this very case. */
  readonly detail: (() => string | null) | null;
}

/** Name of the first-out that it stands under, told with this priority; asked only when something is told. */
export type FoldedUnder = (priority: Priority | null) => string | null;

export const unfolded: FoldedUnder = () => null;

/**
 * Runs a finding through the delays and the lifecycle; transitions go to `pipeline.transitions`, alerts to theirs.
 * True where the alarm went in or out of alarm, got more urgent or came to a further place: then what folds has to be looked at again.
 */
export function raiseAndClear(
  pipeline: PipelineState,
  judged: Judged,
  finding: Finding,
  foldedUnder: FoldedUnder,
  nowMs: number,
): boolean {
  const { delays } = pipeline;
  const { alarm } = judged;
  const change = advanceDelay(delays, alarm, finding.verdict, nowMs, judged.onDelayMs, judged.offDelayMs);
  if (change === DelayChange.cleared) {
    end(pipeline, judged, nowMs);
    return true;
  }
  if (change === DelayChange.raised) {
    begin(pipeline, judged, finding, foldedUnder, nowMs);
    return true;
  }
  if (delays.active[alarm] !== 1) return false;
  if (judged.reAlarmAfterMs !== undefined) tellAgain(pipeline, alarm, judged.reAlarmAfterMs, nowMs);
  // While its own condition is not known it goes on; signs that are known make it worse all the same, and nothing makes it milder.
  const worseOnHold = finding.verdict === Verdict.hold && finding.worse && judged.priority !== null;
  return finding.verdict === Verdict.yes || worseOnHold
    ? regrade(pipeline, judged, finding, foldedUnder, nowMs)
    : false;
}

/**
 * An alarm that was acknowledged long ago and still has its cause, where that is set for it; not what follows from another.
 * Where the clock was set back over a restart nobody knows how long ago: it is told at once.
 */
function tellAgain({ book, transitions }: PipelineState, alarm: number, afterMs: number, nowMs: number): void {
  const record = book.told(alarm);
  if (record?.state !== 'acknowledged' || record.foldedUnder !== null) return;
  const sinceMs = nowMs - record.stateSinceMs;
  if (sinceMs >= 0 && sinceMs < afterMs) return;
  const transition = book.reAlarm(alarm, nowMs);
  if (transition !== null) transitions.push(transition);
}

function begin(
  pipeline: PipelineState,
  judged: Judged,
  finding: Finding,
  foldedUnder: FoldedUnder,
  nowMs: number,
): void {
  const { alarm, priority } = judged;
  const seen = seenNow(pipeline, judged, finding);
  if (priority === null) {
    beginAlert(pipeline, alarm, seen, foldedUnder(priority) === null, nowMs);
    return;
  }
  annunciate(pipeline, alarm, 'conditionTrue', { ...seen, priority, foldedUnder: foldedUnder(priority) }, nowMs);
}

function end(pipeline: PipelineState, judged: Judged, nowMs: number): void {
  endAlert(pipeline, judged.alarm, nowMs);
  const transition = pipeline.book.clear(judged.alarm, nowMs, judged.enabled ? 'conditionClear' : 'configuration');
  if (transition !== null) pipeline.transitions.push(transition);
}

/**
 * The same condition now asks for more than it was told with: a higher priority, a further place, or an alarm instead of an alert; said
 * anew, once, and never as less urgent than it was. Or it has become expected under a permit: then the alarm ends, and an alert tells of it.
 */
function regrade(
  pipeline: PipelineState,
  judged: Judged,
  finding: Finding,
  foldedUnder: FoldedUnder,
  nowMs: number,
): boolean {
  const { alarm, priority } = judged;
  const record = pipeline.book.record(alarm);
  const alarmed = record?.active === true;
  if (priority === null) {
    if (!alarmed || !finding.expected) return false;
    end(pipeline, judged, nowMs);
    begin(pipeline, judged, finding, foldedUnder, nowMs);
    return true;
  }
  if (!alarmed) {
    endAlert(pipeline, alarm, nowMs);
    begin(pipeline, judged, finding, foldedUnder, nowMs);
    return true;
  }
  const moreUrgent = priority < record.priority;
  if (!moreUrgent && !finding.again) return false;
  const told = moreUrgent ? priority : record.priority;
  annunciate(
    pipeline,
    alarm,
    'worsened',
    { ...seenNow(pipeline, judged, finding), priority: told, foldedUnder: foldedUnder(told) },
    nowMs,
  );
  return true;
}

function annunciate(
  pipeline: PipelineState,
  alarm: number,
  event: 'conditionTrue' | 'worsened',
  facts: AlarmFacts,
  nowMs: number,
): void {
  const transition = pipeline.book.raise(alarm, event, pipeline.index.identity(alarm), facts, nowMs);
  if (transition !== null) pipeline.transitions.push(transition);
}

function seenNow(pipeline: PipelineState, judged: Judged, finding: Finding) {
  const detail = judged.detail?.() ?? null;
  return {
    sinceMs: pipeline.delays.trueSinceMs[judged.alarm] as number,
    value: finite(finding.value),
    limit: finite(finding.limit),
    unitOfMeasure: judged.unitOfMeasure,
    where: finding.where,
    ...(detail === null ? {} : { detail }),
  };
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

import type { Priority } from '@ebbline/shared/contract/alarm';
import { advanceDelay, DelayChange } from '../alarm-rules/delays';
import type { Finding } from '../alarm-rules/judge-context';
import type { PipelineState } from './pipeline-state';

/** What a rule needs to turn its finding into a change of an alarm. */
export interface Judged {
  readonly alarm: number;
  readonly onDelayMs: number;
  readonly offDelayMs: number;
  readonly unitOfMeasure: string | null;
  /** Null: the grid makes it an alert, which is not raised as an alarm. */
  readonly priority: Priority | null;
  /** The entry was switched off by the site file: a standing alarm ends by configuration. */
  readonly enabled: boolean;
}

/**
 * Runs a finding through the delays and the lifecycle; transitions go to `pipeline.transitions`.
 * True where the alarm went in or out of alarm: then what folds under it has to be looked at again.
 */
export function raiseAndClear(
  pipeline: PipelineState,
  judged: Judged,
  finding: Finding,
  foldedUnder: string | null,
  nowMs: number,
): boolean {
  if (judged.priority === null) return false;
  const { book, delays, index } = pipeline;
  const { alarm, priority } = judged;
  const change = advanceDelay(delays, alarm, finding.verdict, nowMs, judged.onDelayMs, judged.offDelayMs);
  if (change === DelayChange.none) {
    if (delays.active[alarm] === 1 && finding.worse) worsen(pipeline, judged, finding, foldedUnder, nowMs);
    return false;
  }
  const transition =
    change === DelayChange.cleared
      ? book.clear(alarm, nowMs, judged.enabled ? 'conditionClear' : 'configuration')
      : book.raise(
          alarm,
          'conditionTrue',
          index.identity(alarm),
          factsOf(pipeline, judged, priority, finding, foldedUnder),
          nowMs,
        );
  if (transition !== null) pipeline.transitions.push(transition);
  return true;
}

/** The same condition now asks for a higher priority than it was raised with: said anew, once. */
function worsen(
  pipeline: PipelineState,
  judged: Judged,
  finding: Finding,
  foldedUnder: string | null,
  nowMs: number,
): void {
  const { book, index } = pipeline;
  const record = book.record(judged.alarm);
  if (judged.priority === null || record === null || record.priority <= judged.priority) return;
  const facts = factsOf(pipeline, judged, judged.priority, finding, foldedUnder);
  const transition = book.raise(judged.alarm, 'worsened', index.identity(judged.alarm), facts, nowMs);
  if (transition !== null) pipeline.transitions.push(transition);
}

function factsOf(
  pipeline: PipelineState,
  judged: Judged,
  priority: Priority,
  finding: Finding,
  foldedUnder: string | null,
) {
  return {
    priority,
    sinceMs: pipeline.delays.trueSinceMs[judged.alarm] as number,
    value: finite(finding.value),
    limit: finite(finding.limit),
    unitOfMeasure: judged.unitOfMeasure,
    where: finding.where,
    foldedUnder,
  };
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

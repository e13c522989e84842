import type { Mode } from '@ebbline/shared/contract/http-api';
import { modeOf } from '../../alarm-lifecycle/mode-facts';
import { Verdict } from '../../alarm-rules/verdict';
import type { PipelineState } from '../pipeline-state';
import { byDesign } from './by-design';

/**
 * Sets an alarm aside while its entry is off by the mode of its unit, and brings it back once its condition is judged
 * again and holds, or can't be known. What nobody has acknowledged stays in the list until someone has: a stop may be what
 * the alarm is about. True where that changed.
 */
export function followDesign(
  pipeline: PipelineState,
  alarm: number,
  suppressed: boolean,
  verdict: Verdict,
  mode: Mode,
  nowMs: number,
): boolean {
  const { book, index, transitions } = pipeline;
  const record = book.record(alarm);
  if (record === null) return false;
  const now = modeOf(record);
  const sets = suppressed && now === 'inService' && record.state === 'acknowledged';
  const brings = !suppressed && now === 'suppressedByDesign' && verdict !== Verdict.no;
  if (!sets && !brings) return false;
  const asked = sets
    ? ({ event: 'suppress', details: byDesign(mode), suppressed } as const)
    : ({ event: 'unsuppress', details: null, suppressed } as const);
  const outcome = book.changeMode(alarm, index.identity(alarm), () => record, asked, nowMs, null);
  if (outcome?.ok !== true) return false;
  transitions.push(outcome.transition);
  return true;
}

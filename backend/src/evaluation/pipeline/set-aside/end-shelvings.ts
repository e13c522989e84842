import { modeOf } from '../../alarm-lifecycle/mode-facts';
import type { PipelineState } from '../pipeline-state';
import { suppressedNow } from './by-design';
import { refoldAround } from './refold-around';

/**
 * Brings back what was shelved until now, once a second; what ran out while the program was down comes back with the
 * first. A shelving that began in what is now the future is of before a restart that set the clock back, and nothing told how far the
 * program had come (`followClock`): the time that was granted then counts from now.
 */
export function endShelvings(pipeline: PipelineState, nowMs: number): void {
  const { book } = pipeline;
  for (const alarm of [...book.indices()]) {
    const record = book.record(alarm);
    if (record === null || modeOf(record) !== 'shelved') continue;
    const sinceMs = record.modeSinceMs ?? record.stateSinceMs;
    const untilMs = record.modeUntilMs ?? sinceMs;
    if (nowMs < sinceMs) book.retime(alarm, nowMs, nowMs + (untilMs - sinceMs));
    else if (nowMs >= untilMs) end(pipeline, alarm, nowMs);
  }
}

function end(pipeline: PipelineState, alarm: number, nowMs: number): void {
  const { book, index, transitions } = pipeline;
  const record = book.record(alarm);
  if (record === null) return;
  const suppression = suppressedNow(pipeline, alarm);
  const asked = { event: 'shelvingOver', details: suppression, suppressed: suppression !== null } as const;
  const outcome = book.changeMode(alarm, index.identity(alarm), () => record, asked, nowMs, null);
  if (outcome?.ok !== true) return;
  transitions.push(outcome.transition);
  refoldAround(pipeline, alarm);
}

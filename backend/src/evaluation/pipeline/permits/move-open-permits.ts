import type { PipelineState } from '../pipeline-state';
import { allowPermits } from './allow-permits';

/** Permits are agreed in minutes: a clock that is less wrong moves none. Own rule. */
const leastMs = 60_000;

/**
 * Open permits keep their age and the time that they have left where the clock was set back while the program was down. That is on
 * record, or the next restart would find the old end again.
 */
export function moveOpenPermits(pipeline: PipelineState, backMs: number, nowMs: number): void {
  if (backMs < leastMs) return;
  for (const before of [...pipeline.permits.values()]) {
    const permit = { ...before, openedMs: before.openedMs - backMs, untilMs: before.untilMs - backMs };
    pipeline.permits.set(permit.id, permit);
    allowPermits(pipeline, permit.unit, nowMs);
    const comment = 'the clock of the machine was set back while the program was down; the time that was left stays';
    pipeline.permitChanges.push({ what: 'moved', permit, atMs: nowMs, actor: null, station: null, comment });
  }
}

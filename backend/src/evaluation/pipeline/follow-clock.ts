import { moveOpenPermits } from './permits/move-open-permits';
import type { PipelineState } from './pipeline-state';

/** The program before this one, or this one, is known to have come so far: tick time, ms; NaN says nothing. */
export function clockReached(pipeline: PipelineState, reachedMs: number): void {
  if (!(reachedMs <= pipeline.reachedMs) && !Number.isNaN(reachedMs)) pipeline.reachedMs = reachedMs;
}

/**
 * Once a second, before anything looks at a time. Tick time never goes back within a run; where it lies before what was reached, the
 * machine’s clock was set back while the program was down, by that much at least. What stands or is set aside then keeps its age, and a
 * shelving or a permit the time that it had left, so that none of it waits for the old time to come again.
 */
export function followClock(pipeline: PipelineState, nowMs: number): void {
  const backMs = pipeline.reachedMs - nowMs;
  pipeline.reachedMs = nowMs;
  if (!(backMs > 0)) return;
  const { book, delays } = pipeline;
  book.setBack(backMs);
  for (const alarm of book.indices())
    if (delays.active[alarm] === 1) delays.trueSinceMs[alarm] = book.record(alarm)?.sinceMs ?? Number.NaN;
  moveOpenPermits(pipeline, backMs, nowMs);
}

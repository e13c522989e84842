import type { PipelineState } from './pipeline-state';

/** When this program stood still, and from when on it went on. */
export type Stand = Pick<PipelineState, 'startedMs' | 'stoodFromMs' | 'resumedMs'>;

/**
 * True where what is silent has its time again: this program, or its machine, stood still, and what was sent meanwhile went
 * nowhere. What was silent for longer than its time before that gets none, however often this program stands still.
 * @param lastMs when it was last heard, tick time; NaN: never since the start
 * @param limitMs how long it may be silent
 */
export function awaitedAnew(stand: Stand, lastMs: number, limitMs: number, nowMs: number): boolean {
  const { startedMs, stoodFromMs, resumedMs } = stand;
  const sinceMs = Number.isNaN(lastMs) ? startedMs : lastMs;
  return nowMs - resumedMs <= limitMs && stoodFromMs - sinceMs <= limitMs;
}

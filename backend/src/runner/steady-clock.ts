import type { Clock } from '../ports/clock';

/**
 * So long the clock of the machine has to have gone on evenly, ms, before anything is sealed or removed by it: one that is days or years
 * ahead for some minutes would take all there is, and nothing brings it back.
 */
const steadyMs = 86_400_000;
/** What a clock is set by at once, beyond what it is kept right with, between two looks. ms */
const stepMs = 60_000;

/** Looks again and again whether the clock of the machine goes on evenly. */
export class SteadyClock {
  /** Wall time less monotonic time at the last look, and since when it is the same. ms */
  #aheadMs = Number.NaN;
  #steadySinceMs = Number.POSITIVE_INFINITY;

  constructor(private readonly clock: Clock) {}

  /** Whether the clock was not stepped for long enough. */
  look(): boolean {
    const nowMs = this.clock.monotonicMs();
    const aheadMs = this.clock.wallMs() - nowMs;
    if (!(Math.abs(aheadMs - this.#aheadMs) <= stepMs)) this.#steadySinceMs = nowMs;
    this.#aheadMs = aheadMs;
    return nowMs - this.#steadySinceMs >= steadyMs;
  }
}

import type { Clock } from '../ports/clock';

/** The time in force. Delays, staleness and ages run on it; it never goes back. */
export interface TickClock {
  readonly kind: 'wall' | 'source';
  /** ms since 1970 UTC; NaN on the source clock before the first sample. */
  nowMs(): number;
  /** Tells the source time of a message. True where the time in force moved. */
  reach(sourceMs: number): boolean;
}

/** Monotonic time, anchored once to the wall: a step of the machine's clock moves no delay. */
export function wallTickClock(clock: Clock): TickClock {
  const originMs = clock.wallMs() - clock.monotonicMs();
  return { kind: 'wall', nowMs: () => originMs + clock.monotonicMs(), reach: () => false };
}

/** The newest source time: replays, faster-than-real demo, tests. */
export function sourceTickClock(): TickClock {
  let newestMs = Number.NaN;
  return {
    kind: 'source',
    nowMs: () => newestMs,
    reach(sourceMs) {
      if (!Number.isFinite(sourceMs) || sourceMs <= newestMs) return false;
      newestMs = sourceMs;
      return true;
    },
  };
}

import { Verdict } from './verdict';

/** On- and off-delay of every alarm, as columns by alarm index. Tick time in ms; NaN = not running. */
export interface DelayState {
  /** Since when the condition is true without a break. */
  readonly trueSinceMs: Float64Array;
  /** 0 = no on-delay runs: a byte to look at instead of the time, which is NaN nearly always. */
  readonly timed: Uint8Array;
  /** Since when an active condition is gone without a break. */
  readonly goneSinceMs: Float64Array;
  /** 1 = in alarm, after the on-delay and until the off-delay is over. */
  readonly active: Uint8Array;
}

export const DelayChange = { none: 0, raised: 1, cleared: 2 } as const;
export type DelayChange = (typeof DelayChange)[keyof typeof DelayChange];

export function createDelayState(alarms: number): DelayState {
  return {
    trueSinceMs: new Float64Array(alarms).fill(Number.NaN),
    timed: new Uint8Array(alarms),
    goneSinceMs: new Float64Array(alarms).fill(Number.NaN),
    active: new Uint8Array(alarms),
  };
}

/**
 * Raises once the condition has been true for `onDelayMs`, clears once it has been gone for `offDelayMs`.
 * `hold` never raises and never clears: a running on-delay goes on (one bad sample must not restart it, but only a
 * true verdict ends it), a running off-delay starts anew (gone has to be seen, all the time). Where the clock was set back, a delay
 * that began later than now begins now.
 */
export function advanceDelay(
  delays: DelayState,
  alarm: number,
  verdict: Verdict,
  nowMs: number,
  onDelayMs: number,
  offDelayMs: number,
): DelayChange {
  if (verdict === Verdict.yes) {
    delays.goneSinceMs[alarm] = Number.NaN;
    if (delays.active[alarm] === 1) return DelayChange.none;
    delays.timed[alarm] = 1;
    if (nowMs - begun(delays.trueSinceMs, alarm, nowMs) < onDelayMs) return DelayChange.none;
    delays.active[alarm] = 1;
    return DelayChange.raised;
  }
  if (verdict === Verdict.hold) {
    delays.goneSinceMs[alarm] = Number.NaN;
    return DelayChange.none;
  }
  if (delays.active[alarm] === 0) {
    restDelay(delays, alarm);
    return DelayChange.none;
  }
  if (nowMs - begun(delays.goneSinceMs, alarm, nowMs) < offDelayMs) return DelayChange.none;
  delays.active[alarm] = 0;
  delays.trueSinceMs[alarm] = Number.NaN;
  delays.goneSinceMs[alarm] = Number.NaN;
  return DelayChange.cleared;
}

/** What `advanceDelay` does where the condition of an alarm that is not active is not there; nearly always it is so. */
export function restDelay({ timed, trueSinceMs }: DelayState, alarm: number): void {
  if (timed[alarm] === 0) return;
  timed[alarm] = 0;
  trueSinceMs[alarm] = Number.NaN;
}

/** Since when a delay runs; it begins now where none did, or where it began in what is now the future. */
function begun(sinceMs: Float64Array, alarm: number, nowMs: number): number {
  if (!((sinceMs[alarm] as number) <= nowMs)) sinceMs[alarm] = nowMs;
  return sinceMs[alarm] as number;
}

import { Verdict } from './verdict';

/** On- and off-delay of every alarm, as columns by alarm index. Tick time in ms; NaN = not running. */
export interface DelayState {
  /** Since when the condition is true without a break. */
  readonly trueSinceMs: Float64Array;
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
    goneSinceMs: new Float64Array(alarms).fill(Number.NaN),
    active: new Uint8Array(alarms),
  };
}

/**
 * Raises once the condition has been true for `onDelayMs`, clears once it has been gone for `offDelayMs`.
 * `hold` never raises and never clears: a running on-delay goes on (one bad sample must not restart it, but only a
 * true verdict ends it), a running off-delay starts anew (gone has to be seen, all the time).
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
    const since = delays.trueSinceMs[alarm] as number;
    if (Number.isNaN(since)) delays.trueSinceMs[alarm] = nowMs;
    if (delays.active[alarm] === 1) return DelayChange.none;
    if (nowMs - (Number.isNaN(since) ? nowMs : since) < onDelayMs) return DelayChange.none;
    delays.active[alarm] = 1;
    return DelayChange.raised;
  }
  if (verdict === Verdict.hold) {
    delays.goneSinceMs[alarm] = Number.NaN;
    return DelayChange.none;
  }
  if (delays.active[alarm] === 0) {
    delays.trueSinceMs[alarm] = Number.NaN;
    return DelayChange.none;
  }
  const gone = delays.goneSinceMs[alarm] as number;
  if (Number.isNaN(gone)) delays.goneSinceMs[alarm] = nowMs;
  if (nowMs - (Number.isNaN(gone) ? nowMs : gone) < offDelayMs) return DelayChange.none;
  delays.active[alarm] = 0;
  delays.trueSinceMs[alarm] = Number.NaN;
  delays.goneSinceMs[alarm] = Number.NaN;
  return DelayChange.cleared;
}

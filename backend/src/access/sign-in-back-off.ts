/** What is remembered of the sign-ins under one name, or from one station. */
export interface BackOff {
  /** Failures since the last that was forgiven. */
  readonly failures: number;
  /** Attempts that are being judged. */
  readonly inFlight: number;
  /** When one last failed, ms of a monotonic clock. */
  readonly failedMs: number;
  /** No attempt is taken before, ms of the same clock. */
  readonly waitUntilMs: number;
}

export const backOffRules = {
  /** Failures that cost nothing (ASVS 5.0 V6.3.1 asks that guessing is slowed; the numbers are ours). */
  free: 5,
  firstWaitMs: 30_000,
  longestWaitMs: 900_000,
  forgottenAfterMs: 86_400_000,
} as const;

export const noFailures: BackOff = { failures: 0, inFlight: 0, failedMs: 0, waitUntilMs: 0 };

/** `abandon`: an attempt that was never judged, as the disk failed or too many waited. */
export const backOffEvents = ['begin', 'fail', 'succeed', 'abandon'] as const;
export type BackOffEvent = (typeof backOffEvents)[number];

/** Doubles from failure to failure and stops at the longest: never a lock for good. */
export function waitAfter(failures: number): number {
  const { free, firstWaitMs, longestWaitMs } = backOffRules;
  return failures < free ? 0 : Math.min(firstWaitMs * 2 ** (failures - free), longestWaitMs);
}

/** How long until an attempt may be made, ms; 0 for now. So many at once are taken as there are failures left, later one after the other. */
export function waitBefore(state: BackOff, nowMs: number): number {
  const { failures, inFlight, waitUntilMs } = remembered(state, nowMs);
  if (nowMs < waitUntilMs) return waitUntilMs - nowMs;
  return inFlight < Math.max(1, backOffRules.free - failures) ? 0 : judgedWithinMs;
}

/** When to come again while others are being judged, ms. */
const judgedWithinMs = 1000;

const steps: Readonly<Record<BackOffEvent, (state: BackOff, nowMs: number) => BackOff>> = {
  begin: (state) => ({ ...state, inFlight: state.inFlight + 1 }),
  fail: (state, nowMs) => {
    const failures = state.failures + 1;
    return { ...judged(state), failures, failedMs: nowMs, waitUntilMs: nowMs + waitAfter(failures) };
  },
  succeed: (state) => ({ ...judged(state), failures: 0, waitUntilMs: 0 }),
  abandon: (state) => judged(state),
};

export const backOffAfter = (state: BackOff, event: BackOffEvent, nowMs: number): BackOff =>
  steps[event](remembered(state, nowMs), nowMs);

/** So many failures less: what one who signed in had failed under a name of theirs, from a station where others fail as well. */
export const forgiven = (state: BackOff, count: number): BackOff => ({
  ...state,
  failures: Math.max(0, state.failures - count),
});

/** Whether nothing is left that has to be remembered. */
export const isForgotten = (state: BackOff, nowMs: number): boolean => {
  const { failures, inFlight } = remembered(state, nowMs);
  return failures === 0 && inFlight === 0;
};

const judged = (state: BackOff): BackOff => ({ ...state, inFlight: Math.max(0, state.inFlight - 1) });

const remembered = (state: BackOff, nowMs: number): BackOff =>
  state.failures > 0 && nowMs - state.failedMs >= backOffRules.forgottenAfterMs
    ? { ...noFailures, inFlight: state.inFlight }
    : state;

/** Where a program asks the time. Pure rooms never hold one: they get `now` as an argument. */
export interface Clock {
  /** Wall time, ms since 1970-01-01 UTC. Labels only: it may step both ways. */
  wallMs(): number;
  /** Monotonic time in ms from an arbitrary origin. Delays and ages run on it. */
  monotonicMs(): number;
}
